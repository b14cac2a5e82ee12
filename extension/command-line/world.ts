/** What a command may do to the world, as an interface: the tests hand in one of their own. */
export interface World {
  /** Read a text file; rejects with a {@link CallError} that says why not. */
  read(path: string): Promise<string>;
  /** Write a whole file at once or not at all; `overwrite` false refuses an existing file. */
  write(path: string, content: string, overwrite: boolean): Promise<void>;
  out(text: string): void;
  err(text: string): void;
  /** Tells how far long work is, in place of what was told before; nothing where nobody looks. */
  progress(text: string): void;
  /** Lets others have a turn during long work; true where somebody asked to stop. */
  breathe(): Promise<boolean>;
  readonly terminal: Terminal;
}

export interface Terminal {
  /** Whether colour codes may be printed: never in a pipe or file. */
  readonly colour: boolean;
  readonly columns: number;
}

/** Exit statuses: fine; the file has errors or a `require` fails; the call itself is wrong. */
export const EXIT = { fine: 0, problems: 1, wrongCall: 2 } as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** The call itself cannot be done: told in one line, exit status 2. */
export class CallError extends Error {}
