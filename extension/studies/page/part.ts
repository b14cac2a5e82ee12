import type { TextEdit } from "../../../geometry/language/text.ts";
import type { PageMessage, StudyDocument, StudyFile, TextFile } from "../protocol.ts";
import type { StudiesStrings } from "../strings.ts";
import type { JobRunner } from "./job-runner.ts";

/** What all parts see. */
export interface StudiesState {
  /** `null` until the host has sent it. */
  readonly document: StudyDocument | null;
  /** Files taken in beside. */
  readonly others: readonly StudyFile[];
  /** Name of the part that is shown. */
  readonly part: string;
  /** What could not be done last, until something else is. */
  readonly failed: string | null;
}

/** What a part of the page is given. */
export interface PartContext {
  readonly strings: StudiesStrings;
  /** The part's own worker. */
  readonly jobs: JobRunner;
  state(): StudiesState;
  /** Has the part's `update` called with the next frame. */
  redraw(): void;
  /** What the part kept before a reload; to be checked, for it may be of another release. */
  kept(): unknown;
  /** Keeps plain data of the part over a reload. */
  keep(data: unknown): void;
  post(message: PageMessage): void;
  /** Say something to those who do not see the page. */
  announce(text: string): void;
  /** Makes edits in the document of a version, as one step to undo; a refusal is shown. Says whether it was done. */
  applyEdits(version: number, edits: readonly TextEdit[]): Promise<boolean>;
  /** Saves a text where the builder says; a refusal is shown. Leaving the dialog is none. */
  saveFile(file: TextFile): Promise<boolean>;
}

/** One study as the page shows it. */
export interface StudyView {
  readonly element: HTMLElement;
  /** Follow the state; called while the part is shown, once a frame at most. */
  update(state: StudiesState): void;
}

/** A study's entry in the list of parts. */
export interface StudyPart {
  /** Stable: commands and saved states name it. */
  readonly name: string;
  title(strings: StudiesStrings): string;
  create(context: PartContext): StudyView;
}
