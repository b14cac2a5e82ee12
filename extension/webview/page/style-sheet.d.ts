/** Style sheets are imported for the bundler, which puts them beside the script. */
declare module "*.css";
