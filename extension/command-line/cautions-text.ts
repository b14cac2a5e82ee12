import { CAUTIONS } from "../../geometry/files/cautions.ts";
import { paint } from "./paint.ts";
import type { Terminal } from "./world.ts";
import { wrap } from "./wrap.ts";

/** The cautions as the last block of what a command prints. */
export function cautionsText(terminal: Terminal, cautions: readonly string[] = CAUTIONS): string {
  const lines = cautions.flatMap((caution) => wrap(caution, "  "));
  return [paint("Take care", "bold", terminal), ...lines].join("\n");
}
