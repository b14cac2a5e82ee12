import { spawn } from "node:child_process";
import process from "node:process";

/** The command that opens an address in the user's browser; null where there is no screen to open one on. */
export function browserCommand(
  platform: NodeJS.Platform,
  environment: NodeJS.ProcessEnv,
): readonly [command: string, ...before: string[]] | null {
  if (platform === "darwin") return ["open"];
  // The empty argument is the window's title, which `start` would otherwise take the address for.
  if (platform === "win32") return ["cmd", "/c", "start", ""];
  const hasScreen = Boolean(environment["DISPLAY"] || environment["WAYLAND_DISPLAY"]);
  return hasScreen ? ["xdg-open"] : null;
}

/** Opens an address in the user's browser if there is one. The address has been printed, so nothing is said if not. */
export function openBrowser(address: string): void {
  const command = browserCommand(process.platform, process.env);
  if (command === null) return;
  const [program, ...before] = command;
  const opener = spawn(program, [...before, address], { stdio: "ignore", detached: true });
  opener.on("error", () => {});
  opener.unref();
}
