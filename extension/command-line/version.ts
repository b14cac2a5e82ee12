import manifest from "../../package.json" with { type: "json" };

/** The version of the package, told by `--version`. */
export const VERSION: string = manifest.version;
