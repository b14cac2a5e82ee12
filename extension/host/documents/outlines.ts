import type { TextDocument } from "vscode";
import { type Analysis, analyse } from "../../../geometry/analysis/analyse.ts";
import { mergeProblems } from "../../../geometry/analysis/merge-problems.ts";
import { readSource, type Source } from "../../../geometry/analysis/source.ts";
import type { Settings } from "../../../geometry/figures/settings.ts";
import type { Problem } from "../../../geometry/language/problem.ts";

/** What is known of open outline documents, worked out when first asked for and kept while the text stays. */
export interface Outlines {
  source(document: TextDocument): Source;
  /** One variant of the text as it is now; `null` is the bar as it stands. */
  analysis(document: TextDocument, variant: string | null): Analysis;
  /**
   * The problems of the bar and all its variants, worked out in steps with a breath between; `null` when the text has
   * moved on, or when the work is no longer wanted.
   */
  problems(document: TextDocument, isWanted: () => boolean): Promise<readonly Problem[] | null>;
  forget(uri: string): void;
  /** After a change of settings: everything is worked out anew. */
  forgetAll(): void;
  /** How many documents are held. */
  count(): number;
}

export interface OutlinesHost {
  settings(document: TextDocument): Partial<Settings>;
  breathe(): Promise<void>;
}

interface Entry {
  readonly version: number;
  readonly source: Source;
  readonly settings: Partial<Settings>;
  readonly analyses: Map<string | null, Analysis>;
  problems: readonly Problem[] | null;
}

/** One entry a document, replaced as a whole with each version of its text. */
export function createOutlines(host: OutlinesHost): Outlines {
  const entries = new Map<string, Entry>();

  const entryOf = (document: TextDocument): Entry => {
    const key = document.uri.toString();
    const known = entries.get(key);
    if (known?.version === document.version) return known;
    const entry = {
      version: document.version,
      source: readSource(document.getText()),
      settings: host.settings(document),
      analyses: new Map<string | null, Analysis>(),
      problems: null,
    };
    // A closed document has no end that would take its entry away.
    if (!document.isClosed) entries.set(key, entry);
    return entry;
  };

  return {
    source: (document) => entryOf(document).source,
    analysis: (document, variant) => analysisOf(entryOf(document), variant),
    problems: async (document, isWanted) => {
      const entry = entryOf(document);
      const isCurrent = () => isWanted() && entries.get(document.uri.toString()) === entry;
      entry.problems ??= await problemsInSteps(entry, isCurrent, host);
      return entry.problems;
    },
    forget: (uri) => entries.delete(uri),
    forgetAll: () => entries.clear(),
    count: () => entries.size,
  };
}

function analysisOf(entry: Entry, variant: string | null): Analysis {
  const { source, settings, analyses } = entry;
  const known = analyses.get(variant) ?? analyse(source, { variant, settings });
  analyses.set(variant, known);
  return known;
}

async function problemsInSteps(
  entry: Entry,
  isCurrent: () => boolean,
  { breathe }: OutlinesHost,
): Promise<readonly Problem[] | null> {
  const base = analysisOf(entry, null).problems;
  const ofVariants: { variant: string; problems: readonly Problem[] }[] = [];
  for (const variant of entry.source.variants) {
    await breathe();
    if (!isCurrent()) return null;
    ofVariants.push({ variant, problems: analysisOf(entry, variant).problems });
  }
  return mergeProblems(base, ofVariants);
}
