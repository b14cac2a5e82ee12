/** A line laid out, its comment still to be placed. `column` is where the comment stood, from 0. */
export interface LaidLine {
  readonly code: string;
  readonly comment: string | null;
  readonly column: number;
  /** False for a line that is left as it stands. */
  readonly isLaidOut: boolean;
}
