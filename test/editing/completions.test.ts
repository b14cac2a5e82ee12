import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { type Completion, completionsAt } from "../../geometry/editing/editing.ts";
import { filledTemplate, insertionOf, snippetOf } from "../../geometry/editing/template.ts";
import { analysisAt, BAR, LETS, withCrLf } from "./cursor-text.ts";

function offers(marked: string, variant: string | null = null): readonly Completion[] {
  const { analysis, offset } = analysisAt(marked, variant);
  return completionsAt(analysis, offset);
}

/** The labels in the order in which the editor sorts them. */
function labels(marked: string): readonly string[] {
  return [...offers(marked)].sort((a, b) => (a.sortText < b.sortText ? -1 : 1)).map(({ label }) => label);
}

function offer(marked: string, label: string): Completion {
  const found = offers(marked).find((candidate) => candidate.label === label);
  if (found === undefined) throw new Error(`'${label}' is not offered`);
  return found;
}

const inPath = (rest: string) => `${LETS}outline {\n  from (0 mm, 0 mm)\n  ${rest}\n}\n`;

describe("statements", () => {
  it("are offered at the start of a line, as snippets with an example", () => {
    const thickness = offer("|", "thickness");
    expect(thickness).toMatchObject({
      kind: "statement",
      insertText: `thickness $${"{1:12 mm}"}`,
      isSnippet: true,
      range: { start: 0, end: 0 },
    });
    expect(thickness.documentation).toContain("```bar\nthickness 12 mm\n```");
  });

  it("replace the word that is being typed, and the whole of one that the cursor stands in", () => {
    expect(offer(`${LETS}th|`, "thickness").range).toEqual({ start: LETS.length, end: LETS.length + 2 });
    expect(offer(`${LETS}th|ick`, "thickness").range).toEqual({ start: LETS.length, end: LETS.length + 5 });
  });

  it("leave out what may stand only once and stands already, but not the word at the cursor", () => {
    expect(labels("thickness 12 mm\nspin 4200 rpm ccw\n|")).not.toContain("thickness");
    expect(labels("thickness 12 mm\n|")).toContain("hole");
    expect(labels("thick|ness 12 mm\n")).toContain("thickness");
  });

  it("are the bare word where something follows on the line already", () => {
    expect(offer("thick| 12 mm", "thickness")).toMatchObject({ insertText: "thickness", isSnippet: false });
    expect(offer("thick| # how thick", "thickness").isSnippet).toBe(true);
  });

  it("come again behind a block that is not closed", () => {
    expect(labels(`outline {\n  from (0 mm, 0 mm)\nbore 22 mm\n|`)).toContain("spin");
  });

  it("are not offered in comments, in strings, in numbers, or behind a complete statement", () => {
    for (const marked of [
      "# thick|",
      "thickness 12 mm # |",
      "// thick|",
      'bar "th|"',
      'bar "th|',
      "thickness 1|2 mm",
      "thickness 12 mm |",
      'bar "x" |',
    ]) {
      expect(labels(marked), marked).toEqual([]);
    }
  });

  it("are offered on CRLF text", () => {
    const text = withCrLf(`${BAR}\n`);
    const offered = completionsAt(analyse(readSource(text)), text.length);
    expect(offered.map(({ label }) => label)).toContain("outline repeat");
  });
});

describe("steps", () => {
  it("begin with from", () => {
    expect(labels("outline {\n  |\n}")).toEqual(["from"]);
    expect(labels("outline repeat 2 { |")).toEqual(["from"]);
  });

  it("then go on with the others, the end of the path last", () => {
    const offered = [
      "line",
      "arc with radius",
      "arc through a point",
      "arc about a centre",
      "spiral",
      "close",
    ];
    expect(labels(inPath("|"))).toEqual(offered);
    expect(labels(inPath("li|"))).toEqual(offered);
    expect(labels("cutout {\n from (0 mm, 0 mm)\n |")).toEqual(offered);
  });

  it("may follow a whole step on its line, behind its corner", () => {
    expect(labels("outline { from (0 mm, 0 mm) | close }").slice(0, 3)).toEqual(["round", "bevel", "line"]);
    expect(offer("outline { from (0 mm, 0 mm) | close }", "line").isSnippet).toBe(true);
  });

  it("do not follow an unfinished one", () => {
    expect(labels(inPath("arc (1 mm, 2 mm) |"))).toEqual(["radius", "through", "about"]);
    expect(labels(inPath("line |"))).toEqual(["(x, y)", "(r @ angle)", "by (dx, dy)"]);
  });
});

describe("options stand where they fit", () => {
  it.each([
    [inPath("arc (1 mm, 2 mm) radius 5 mm |"), ["turning left", "turning right"]],
    [inPath("arc (1 mm, 2 mm) radius 5 mm turning |"), ["left", "right"]],
    [inPath("arc (1 mm, 2 mm) about (0 mm, 0 mm) |"), ["turning left", "turning right"]],
    [inPath("spiral (1 mm @ 20 deg) |"), ["turning left", "turning right"]],
    [inPath("arc (1 mm, 2 mm) through |"), ["(x, y)", "(r @ angle)", "by (dx, dy)"]],
    [inPath("line by |"), ["(dx, dy)"]],
    ["outline |", ["{ … }", "repeat", "mirror x", "mirror y"]],
    ["outline repeat 2 |", ["{ … }"]],
    ["hole |", ["(x, y)", "(r @ angle)", "ring"]],
    ["hole (0 mm, 1 mm) |", ["diameter"]],
    ["hole ring 4 |", ["at radius"]],
    ["hole ring 4 at |", ["radius"]],
    ["hole ring 4 at radius 40 mm |", ["diameter"]],
    ["hole ring 4 at radius 40 mm diameter 6 mm |", ["from"]],
    ["slot (0 mm, 0 mm) |", ["to"]],
    ["slot (0 mm, 0 mm) to (1 mm, 0 mm) |", ["width"]],
    ["spin 4200 rpm |", ["ccw", "cw"]],
    ["spin speed c|", ["ccw", "cw"]],
    ["approach 1 m/s |", ["to"]],
    ["target |", ["edge", "face", "round"]],
    ["target edge |", ["offset"]],
    ["require mass |", ["<=", ">="]],
    ["require bite |", ["at"]],
    ["require bite at 3 m/s |", ["<=", ">="]],
    ["let tail = 96 mm |", ["from"]],
    ["let tail = 96 mm from 80 mm |", ["to"]],
    ['variant "x" |', ["{ … }"]],
  ])("%s", (marked, expected) => {
    expect(labels(marked.includes("speed c") ? `${LETS}${marked}` : marked)).toEqual(expected);
  });

  it("with what follows them, unless that stands there already", () => {
    expect(offer(inPath("arc (1 mm, 2 mm) |"), "radius")).toMatchObject({
      kind: "option",
      insertText: `radius $${"{1:160 mm}"}`,
    });
    expect(offer(inPath("arc (1 mm, 2 mm) rad| 5 mm turning left"), "radius").insertText).toBe("radius");
    expect(labels(inPath("arc (1 mm, 2 mm) radius 5 mm turn| left"))).toEqual(["turning"]);
  });

  it("and not behind what cannot be read", () => {
    expect(labels("hole hole |")).toEqual([]);
    expect(labels("nonsense |")).toEqual([]);
    expect(labels("spin 4200 rpm ccw |")).toEqual([]);
  });
});

describe("lets", () => {
  it("carry their value and what their comment says", () => {
    const reach = offer(`${LETS}thickness |`, "reach");
    expect(reach).toMatchObject({ kind: "name", detail: "= 130 mm", insertText: "reach" });
    expect(reach.documentation).toBe("spin axis to the tip\n\n130 mm = 5.11811 in");
  });

  it("of the kind that fits come first", () => {
    const forLength = labels(`${LETS}thickness |`);
    expect(forLength.slice(0, 3)).toEqual(["reach", "waist", "tail"]);
    expect(forLength.indexOf("tilt")).toBeGreaterThan(forLength.indexOf("sqrt"));
    expect(labels(inPath("line (reach @ |"))[0]).toBe("tilt");
    expect(labels(`${LETS}spin |`)[0]).toBe("speed");
    expect(labels(`${LETS}outline repeat |`)[0]).toBe("teeth");
    expect(labels(`${LETS}let s = sin(|`)[0]).toBe("tilt");
  });

  it("are offered in a point, behind an operator, and as the word goes", () => {
    for (const marked of [
      inPath("line (|"),
      inPath("line (reach, |"),
      inPath("line (reach - |"),
      inPath("line (re|, 0 mm)"),
    ])
      expect(labels(marked), marked).toContain("waist");
  });

  it("leave out the one that is being defined and all that hang on it", () => {
    const own = labels(`${LETS}let more = |`);
    expect(own).toContain("reach");
    expect(own).not.toContain("more");
    expect(labels(LETS.replace("= 130 mm", "= |"))).not.toContain("tail");
    expect(labels(`${LETS}variant "x" { reach = | }`)).not.toContain("tail");
  });

  it("are not offered where a new name or a text is to stand", () => {
    for (const marked of ["let |", "let a|", "bar |", "variant |"])
      expect(labels(`${LETS}${marked}`)).toEqual([]);
  });

  it("tell of functions and pi", () => {
    expect(offer("let a = |", "atan2")).toMatchObject({
      kind: "function",
      detail: "atan2(y, x)",
      insertText: `atan2($${"{1:y}"}, $${"{2:x}"})`,
    });
    expect(offer("let a = at|(1 mm, 2 mm)", "atan2").insertText).toBe("atan2");
    expect(offer("let a = |", "pi").kind).toBe("constant");
  });
});

describe("units", () => {
  it("follow a number, of the kind that is expected", () => {
    expect(labels("thickness 12 |").slice(0, 3)).toEqual(["mm", "in", "cm"]);
    expect(labels("spin 4200 |").slice(0, 2)).toEqual(["rpm", "rad/s"]);
    expect(labels("approach 0.5 |")).toEqual(["m/s", "km/h", "mph", "ft/s", "to"]);
    expect(labels("density 7850 |")).toEqual(["kg/m^3", "g/cm^3", "lb/in^3"]);
    expect(labels(inPath("line (20 mm @ 30 |"))).toEqual(["deg", "rad", "turn"]);
    expect(labels("require mass <= 1.6 |").slice(0, 2)).toEqual(["kg", "g"]);
    expect(labels("require tip_speed <= 90 |")[0]).toBe("m/s");
    expect(labels(`${LETS}variant "x" { tilt = 20 | }`).slice(0, 2)).toEqual(["deg", "rad"]);
    expect(labels("let a = (1/4) |")[0]).toBe("mm");
  });

  it("that the file writes come first", () => {
    expect(labels("thickness 1 in\nlet a = 3 in\nbore 1 |")[0]).toBe("in");
  });

  it("of lengths come first where any kind will do", () => {
    const offered = labels("let a = 5 |");
    expect(offered[0]).toBe("mm");
    expect(offered).toContain("rpm");
    expect(offered.indexOf("rpm")).toBeGreaterThan(offered.indexOf("ft"));
  });

  it("get a blank where the cursor touches the number, and replace what is typed of them", () => {
    expect(offer("thickness 12|", "mm").insertText).toBe(" mm");
    expect(offer("thickness 12 |", "mm").insertText).toBe("mm");
    expect(offer("thickness 12m|", "mm")).toMatchObject({ insertText: "mm", range: { start: 12, end: 13 } });
  });

  it("go on with a unit that is begun", () => {
    expect(labels("density 7850 kg/|").slice(0, 1)).toEqual(["m^3"]);
  });

  it("do not follow a plain number, a let, or a value that has its unit", () => {
    for (const marked of [
      `${LETS}outline repeat 2 |`,
      `${LETS}hole ring 4 |`,
      `${LETS}thickness reach |`,
      `${LETS}let a = (reach) |`,
    ]) {
      expect(
        offers(marked).filter(({ kind }) => kind === "unit"),
        marked,
      ).toEqual([]);
    }
  });
});

describe("materials, figures and variants", () => {
  it("come with their values and sources", () => {
    const s7 = offer("material |", "s7_tool_steel");
    expect(s7).toMatchObject({ kind: "material", insertText: "s7_tool_steel" });
    expect(s7.documentation).toContain("7760 kg/m³");
    expect(s7.documentation).toContain("1585 MPa");
    expect(s7.documentation).toContain("makers");
  });

  it("come with an example that holds as it stands", () => {
    expect(offer("require |", "mass")).toMatchObject({
      kind: "figure",
      insertText: `mass $${"{1|<=,>=|}"} $${"{2:1.6 kg}"}`,
    });
    expect(offer("require |", "bite").insertText).toContain(`bite at $${"{1:3 m/s}"}`);
    expect(labels("require balance <= |").slice(0, 4)).toEqual(["G40", "G6.3", "G16", "pi"]);
    expect(labels("require mass <= |")[0]).toBe("1.6 kg");
  });

  it("are overrides and settings in a variant, each once", () => {
    const offered = labels(`${LETS}variant "x" { reach = 140 mm | }`);
    expect(offered).toContain("waist");
    expect(offered).toContain("thickness");
    expect(offered).not.toContain("reach");
    expect(offered).not.toContain("outline");
    expect(offer(`${LETS}variant "x" { | }`, "waist")).toMatchObject({
      kind: "variant",
      insertText: `waist = $${"{1:24 mm}"}`,
    });
    expect(labels(`${LETS}variant "x" { thickness 10 mm | }`)).not.toContain("thickness");
  });
});

describe("an aim", () => {
  const aim = (rest: string) => labels(`${LETS}aim ${rest}|`);

  it("is followed from goal to names", () => {
    expect(aim("")).toEqual(["most", "least"]);
    expect(aim("most ")).toContain("bite");
    expect(offer(`${LETS}aim most |`, "mass")).toMatchObject({ insertText: "mass", isSnippet: false });
    expect(offer(`${LETS}aim most |`, "bite").insertText).toBe(`bite at $${"{1:3 m/s}"}`);
    expect(aim("most inertia ")).toEqual(["and most", "and least", "keeping", "by"]);
    expect(aim("most bite ")).toEqual(["at"]);
    expect(aim("most inertia and ")).toEqual(["most", "least"]);
    expect(aim("most inertia and least mass ")).toEqual(["keeping", "by"]);
    expect(aim("most inertia keeping ")).toContain("clean_bite");
    expect(offer(`${LETS}aim most inertia keeping |`, "mass").insertText).toContain("<=");
    expect(aim("most inertia keeping mass <= 1 kg ")).toEqual([",", "by"]);
    expect(aim("most inertia by ")).toEqual(["reach", "waist", "tail", "tilt", "speed", "teeth"]);
    expect(aim("most inertia by reach, ")).not.toContain("reach");
  });

  it("offers the limits of the figure they are for, the last one named", () => {
    expect(aim("most inertia keeping mass <= ")[0]).toBe("1.6 kg");
    expect(aim("most inertia keeping mass <= 1 kg, balance <= ").slice(0, 2)).toEqual(["G40", "G6.3"]);
    expect(aim("most inertia keeping mass <= 1 kg, balance <= G16, bite at 3 m/s >= ")[0]).toBe("6 mm");
    expect(aim("most inertia keeping mass <= 1 ")[0]).toBe("kg");
  });

  it("goes on in parentheses, over several lines", () => {
    expect(aim("most inertia keeping (")).toContain("mass");
    expect(labels("aim most inertia keeping (mass <= 1 kg,\n  |)\n")).toContain("balance");
    expect(aim("most inertia keeping (mass <= 1 kg) ")).toContain("by");
    expect(labels(`${LETS}aim most inertia by (waist,\n  |)\n`)).toContain("reach");
  });

  it("is not offered where one stands already", () => {
    expect(labels(`${LETS}|`)).toContain("aim");
    expect(labels(`${LETS}aim least mass by waist\n|`)).not.toContain("aim");
  });
});

describe("templates", () => {
  it("become snippets with numbered places, choices, repeats and a last place", () => {
    expect(snippetOf("a ‹b c› ‹x|y› ‹=1› ‹›")).toBe(`a $${"{1:b c}"} $${"{2|x,y|}"} $1 $0`);
    expect(filledTemplate("a ‹b c› ‹x|y› ‹=1›‹›")).toBe("a b c x b c");
  });

  it("keep the signs of snippets plain", () => {
    expect(snippetOf("{ $x }")).toBe("{ \\$x \\}");
    expect(insertionOf("close }")).toEqual({ insertText: "close }", isSnippet: false });
  });
});
