import type { Analysis } from "../analysis/analyse.ts";
import { cursorPlace } from "./cursor-place.ts";
import { matchesAt } from "./expected-at.ts";
import type { Form } from "./form.ts";
import { functionHelp } from "./function-help.ts";
import { codeBlock } from "./markdown.ts";
import type { FormMatch } from "./match-form.ts";
import type { OpenCall } from "./scan-value.ts";
import { STATEMENT_HELP, STEP_HELP, type StatementHelp } from "./statement-help.ts";

/** One parameter: where it stands in the label, and what it is. */
export interface SignatureParameter {
  readonly start: number;
  readonly end: number;
  readonly documentation: string;
}

/** Parameter help: how the statement, step or call at the cursor is written, and at which part the cursor is. */
export interface Signature {
  readonly label: string;
  readonly parameters: readonly SignatureParameter[];
  /** Index of the parameter at the cursor; −1 behind the last one. */
  readonly active: number;
  /** Markdown. */
  readonly documentation: string;
}

/** The parameter help at an offset; null where there is none: in comments, in strings, at the start of a line. */
export function signatureAt({ source, design }: Analysis, offset: number): Signature | null {
  const place = cursorPlace(source.tree.text, offset);
  if (place === null || place.item.length === 0) return null;
  const [match] = matchesAt(place, design);
  if (match === undefined) return null;
  const called = match.call && callSignature(match.call);
  return called ?? formSignature(match);
}

function callSignature({ name, argument }: OpenCall): Signature | null {
  const help = functionHelp(name);
  if (help === null) return null;
  const { summary, example, parameters, takesMore } = help;
  const shown = parameters.map((parameter) => ({ text: parameter.name, about: parameter.about }));
  const more = takesMore ? [{ text: "…", about: parameters.at(-1)?.about ?? "" }] : [];
  const all = [...shown, ...more];
  const active = argument < all.length || takesMore ? Math.min(argument, all.length - 1) : -1;
  return written(`${name}(`, all, ", ", ")", active, `${summary}\n\n${codeBlock(example)}`);
}

function formSignature({ form, active }: FormMatch): Signature {
  const help = helpOf(form);
  const shown = form.parts.map(({ shown: text, about }) => ({ text, about }));
  const documentation = help === null ? "Gives a let another value in this variant." : help.summary;
  return written(`${form.keyword} `, shown, " ", "", active, documentation);
}

function helpOf({ keyword }: Form): StatementHelp | null {
  const table: Readonly<Record<string, StatementHelp>> = { ...STATEMENT_HELP, ...STEP_HELP };
  return Object.hasOwn(table, keyword) ? (table[keyword] ?? null) : null;
}

function written(
  head: string,
  parts: readonly { readonly text: string; readonly about: string }[],
  between: string,
  tail: string,
  active: number,
  documentation: string,
): Signature {
  let label = head;
  const parameters: SignatureParameter[] = [];
  for (const [index, { text, about }] of parts.entries()) {
    if (index > 0) label += between;
    parameters.push({ start: label.length, end: label.length + text.length, documentation: about });
    label += text;
  }
  return { label: label + tail, parameters, active, documentation };
}
