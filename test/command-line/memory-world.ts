import { run } from "../../extension/command-line/run.ts";
import { CallError, type Terminal, type World } from "../../extension/command-line/world.ts";

/** A world of its own for one call: files in memory, what was printed kept. */
export class MemoryWorld implements World {
  readonly files: Map<string, string>;
  readonly terminal: Terminal;
  printed = "";
  complained = "";
  /** What was told on the way. */
  readonly told: string[] = [];
  breaths = 0;
  /** At which breath somebody asks to stop. */
  stopAtBreath = Number.POSITIVE_INFINITY;

  constructor(files: Readonly<Record<string, string>>, terminal: Terminal = { colour: false, columns: 80 }) {
    this.files = new Map(Object.entries(files));
    this.terminal = terminal;
  }

  async read(path: string): Promise<string> {
    const text = this.files.get(path);
    if (text === undefined) throw new CallError(`Cannot read ${path}: there is no such file or folder.`);
    return text;
  }

  async write(path: string, content: string, overwrite: boolean): Promise<void> {
    if (this.files.has(path) && !overwrite)
      throw new CallError(`${path} exists already; --force replaces it.`);
    this.files.set(path, content);
  }

  out(text: string): void {
    this.printed += text;
  }

  err(text: string): void {
    this.complained += text;
  }

  progress(text: string): void {
    this.told.push(text);
  }

  async breathe(): Promise<boolean> {
    this.breaths += 1;
    return this.breaths >= this.stopAtBreath;
  }

  run(...argv: string[]) {
    return run(argv, this);
  }
}
