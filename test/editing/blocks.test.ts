/** Blocks of settings in the editor: completion, hovers, parameter help, outline, folding, colours. */
import { describe, expect, it } from "vitest";
import {
  completionsAt,
  foldingRanges,
  hoverAt,
  semanticTokens,
  signatureAt,
  symbols,
} from "../../geometry/editing/editing.ts";
import { analysisAt, BAR, sliceOf, sourceAt } from "./cursor-text.ts";

const SHAPE =
  "outline { from (60 mm, -20 mm) line (60 mm, 20 mm) line (-60 mm, 20 mm) line (-60 mm, -20 mm) close }\nbore 20 mm\nspin 3000 rpm ccw\n";

function offers(marked: string) {
  const { analysis, offset } = analysisAt(`${BAR}${SHAPE}${marked}`);
  return completionsAt(analysis, offset);
}
const labels = (marked: string) => offers(marked).map(({ label }) => label);

function said(marked: string): string {
  const { analysis, offset } = analysisAt(`${BAR}${SHAPE}${marked}`);
  return hoverAt(analysis, offset)?.lines.join("\n") ?? "nothing";
}

function signature(marked: string): readonly [string, string] | null {
  const { analysis, offset } = analysisAt(`${BAR}${SHAPE}${marked}`);
  const found = signatureAt(analysis, offset);
  const active = found?.parameters[found.active];
  return found && [found.label, active ? sliceOf(found.label, active) : ""];
}

describe("completion", () => {
  it("offers a block as a statement, once", () => {
    expect(labels("|")).toEqual(expect.arrayContaining(["budget", "event"]));
    expect(labels("budget { limit 6 kg }\n|")).not.toContain("budget");
    expect(offers("bud|").find(({ label }) => label === "budget")?.insertText).toMatch(
      /^budget \{\n {2}limit/,
    );
  });

  it("offers the settings of the block, those that stand already left out", () => {
    expect(labels("budget {\n  |\n}")).toEqual(["limit", "part", "scale"]);
    expect(labels('budget {\n  limit 6 kg\n  part "a" 2 kg\n  |\n}')).toEqual(["part", "scale"]);
    expect(offers("budget {\n  pa|\n}").find(({ label }) => label === "part")?.insertText).toBe(
      // biome-ignore lint/suspicious/noTemplateCurlyInString: places of a snippet
      'part "${1:frame}" ${2:2.1 kg}',
    );
  });

  it("offers figures with a limit where the block takes them", () => {
    expect(labels("event {\n  |\n}")).toEqual(
      expect.arrayContaining(["measured_spin_down", "tip_speed", "bite", "spin_down"]),
    );
    expect(labels("event { tip_speed |")).toEqual(["<=", ">="]);
    expect(labels("event { tip_speed <= |")).toContain("90 m/s");
    expect(labels("budget {\n  |\n}")).not.toContain("tip_speed");
  });

  it("offers units of the kind, then the options and the next settings", () => {
    expect(labels("budget { limit 6 |")[0]).toBe("kg");
    const behind = labels('budget { part "a" 2 kg |');
    expect(behind).toEqual(expect.arrayContaining(["count", "spare", "limit"]));
    expect(labels('budget { part "a" 2 kg count 4 |')).toContain("spare");
    expect(labels('budget { part "a" 2 kg\n|')).toContain("scale");
    expect(labels('budget { part "a" 2 kg }\n|')).toContain("event");
  });
});

describe("parameter help", () => {
  it("shows the form of a setting and of a limit", () => {
    expect(signature('budget { part "a" |')).toEqual(['part "name" mass [count n] [spare]', "mass"]);
    expect(signature("event { tip_speed <= |")).toEqual(["tip_speed <=|>= limit", "limit"]);
    expect(signature("budget |")).toEqual(["budget { settings }", "{ settings }"]);
  });
});

describe("hovers", () => {
  it("tell what a block, a setting and an option mean", () => {
    expect(said("bud|get { limit 6 kg }")).toContain("What the robot may weigh and what is in it");
    expect(said("budget { lim|it 6 kg }")).toContain("**limit**: What the robot may weigh in all");
    expect(said('budget { part "a" 2 kg cou|nt 4 }')).toContain("**count**: How many of them");
    expect(said('budget { part "a" 2 kg spa|re }')).toContain("can do without it");
    expect(said("budget { limit 6| kg }")).toContain("13.2277 lb");
  });

  it("tell the figures of the block, and how a limit stands", () => {
    const { analysis } = analysisAt(`${BAR}${SHAPE}|`);
    const massKg = analysis.assessment.mass?.massKg ?? Number.NaN;
    const bar = (massKg * 1000).toPrecision(4);
    expect(said("budg|et { limit 1 kg }")).toContain(`Parts and bar ${bar} g`);
    expect(said("event { tip_sp|eed <= 75 m/s }")).toMatch(/Tip speed[\s\S]*Holds: 19\.87 m\/s/);
  });
});

describe("outline, folding and colours", () => {
  const marked = `${BAR}${SHAPE}|budget {\n  limit 6 kg\n  part "a" 2 kg count 4\n}\nevent { mass <= 2 kg }\n`;

  it("list what stands in a block", () => {
    const listed = symbols(sourceAt(marked).source).filter(({ kind }) => kind === "block");
    expect(
      listed.map(({ name, children }) => [name, children.map((child) => `${child.name} ${child.detail}`)]),
    ).toEqual([
      ["budget", ["limit 6 kg", 'part "a" 2 kg count 4']],
      ["event", ["mass <= 2 kg"]],
    ]);
  });

  it("fold a block", () => {
    const { source, offset } = sourceAt(marked);
    const folded = foldingRanges(source).filter(({ range }) => range.start >= offset);
    expect(folded.map(({ range }) => sliceOf(source.text, range))).toEqual([
      '{\n  limit 6 kg\n  part "a" 2 kg count 4',
    ]);
  });

  it("tell settings and options from lets, and figures from both", () => {
    const { source, offset } = sourceAt(marked);
    const found = semanticTokens(source).filter(({ range }) => range.start >= offset);
    const words = found.map(({ range, type }) => `${sliceOf(source.text, range)}:${type}`);
    expect(words).toEqual(
      expect.arrayContaining([
        "budget:keyword",
        "limit:keyword",
        "count:keyword",
        "mass:property",
        "kg:enumMember",
      ]),
    );
  });
});
