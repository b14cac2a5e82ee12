/**
 * What the host of the editor and the studies page say to each other: plain data, one union a direction. Both sides
 * import this file and check what they receive with `messages.ts`. The host only carries texts: everything is worked
 * out by the page's own workers.
 */
import type { UnitSystem } from "../../geometry/figures/present.ts";
import type { Settings } from "../../geometry/figures/settings.ts";
import type { TextEdit } from "../../geometry/language/text.ts";

/** An outline file as the editor has it, saved or not. */
export interface StudyFile {
  readonly uri: string;
  readonly fileName: string;
  readonly text: string;
}

/** The file that the panel belongs to. */
export interface StudyDocument extends StudyFile {
  /** Never falls while a page lives; edits name the version that they were made for. */
  readonly version: number;
  /** The variant that is looked at in the preview. */
  readonly variant: string | null;
  readonly units: UnitSystem;
  readonly settings: Partial<Settings>;
}

/** What the page keeps of itself between reloads; the host reads `documentUri` to bring a panel back. */
export interface SavedState {
  readonly documentUri: string | null;
  /** Addresses of the files that were taken in beside. */
  readonly others: readonly string[];
  /** Name of the part that is shown. */
  readonly part: string;
  /** What each part keeps, by its name; a part checks its own. */
  readonly parts: Readonly<Record<string, unknown>>;
}

/** From the host to the page. */
export type HostMessage =
  /** The text, its variant or the settings, at first and after each change. */
  | { readonly type: "document"; readonly document: StudyDocument }
  /** The files taken in beside, as they are now. */
  | { readonly type: "others"; readonly files: readonly StudyFile[] }
  /** Show this part: a command asked for it. */
  | { readonly type: "show"; readonly part: string }
  /** A request is done, or refused with a reason for the reader. */
  | { readonly type: "done"; readonly request: number; readonly refused: string | null };

/** From the page to the host. */
export type PageMessage =
  /** The page is there (again), and wants the document and these other files. */
  | { readonly type: "ready"; readonly others: readonly string[] }
  /** Let the builder choose other files to take in. */
  | { readonly type: "pickOthers" }
  | { readonly type: "dropOther"; readonly uri: string }
  /** Make these edits in the document, as one step to undo, if it still has this version. */
  | {
      readonly type: "applyEdits";
      readonly request: number;
      readonly version: number;
      readonly edits: readonly TextEdit[];
    }
  /** Save a text where the builder says. */
  | { readonly type: "saveFile"; readonly request: number; readonly file: TextFile }
  | { readonly type: "showCautions" }
  /** A bug, for the log. */
  | { readonly type: "fault"; readonly reason: string };

/** A text to save. */
export interface TextFile {
  /** Name to suggest, with its ending. */
  readonly name: string;
  /** What files of that ending are called. */
  readonly kind: string;
  /** What the file holds, for the message that it is written. */
  readonly summary: string;
  readonly content: string;
}
