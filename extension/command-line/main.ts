import process from "node:process";
import { nodeWorld } from "./node-world.ts";
import { run } from "./run.ts";

// A reader that goes away early (`| head`) is no failure of ours.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

process.exitCode = await run(process.argv.slice(2), nodeWorld());
