import { styleText } from "node:util";
import type { Terminal } from "./world.ts";

export type Paint = "bold" | "dim" | "red" | "green" | "yellow" | "cyan";

/** Text in a colour or weight, where the terminal takes colour codes. */
export function paint(text: string, style: Paint, { colour }: Terminal): string {
  return colour ? styleText(style, text, { validateStream: false }) : text;
}
