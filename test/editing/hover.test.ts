import { describe, expect, it } from "vitest";
import { hoverAt } from "../../geometry/editing/editing.ts";
import { plainText } from "../../geometry/editing/markdown.ts";
import { FIGURES } from "../../geometry/figures/catalogue.ts";
import { analysisAt, BAR, LETS, sliceOf } from "./cursor-text.ts";

/** The text that the hover is about, and what it says. */
function hover(marked: string, variant: string | null = null): readonly [string, string] | null {
  const { analysis, offset } = analysisAt(marked, variant);
  const found = hoverAt(analysis, offset);
  return found && [sliceOf(analysis.source.text, found.range), found.lines.join("\n\n")];
}

const said = (marked: string, variant: string | null = null): string =>
  hover(marked, variant)?.[1] ?? "nothing";
const about = (marked: string): string | null => hover(marked)?.[0] ?? null;

const TRIANGLE =
  "outline { from (60 mm, -20 mm) line (60 mm, 20 mm) line (-60 mm, 0 mm) close }\nbore 20 mm\n";

describe("values", () => {
  it("of a number are told in the other units", () => {
    expect(hover("thickness 1|2 mm")).toEqual(["12 mm", "`12 mm` = 0.472441 in"]);
    expect(hover("thickness 12 m|m")).toEqual(["12 mm", "`12 mm` = 0.472441 in"]);
    expect(said("thickness 0.|5 in")).toBe("`0.5 in` = 12.7 mm");
    expect(said("spin 42|00 rpm ccw")).toBe("`4200 rpm` = 439.823 rad/s");
    expect(said("approach 0.5 m|/s to 6 m/s")).toBe("`0.5 m/s` = 1.8 km/h = 1.11847 mph");
    expect(said("let a = 9|0 deg")).toBe("`90 deg` = 1.5708 rad");
    expect(said("density 785|0 kg/m^3")).toBe("`7850 kg/m^3` = 0.283599 lb/in^3");
  });

  it("of a sum are told at its sign, of its parts at the parts", () => {
    const marked = (text: string) => `${LETS}let end = ${text}`;
    expect(hover(marked("reach |- 6 mm"))).toEqual(["reach - 6 mm", "`reach - 6 mm` = 124 mm = 4.88189 in"]);
    expect(about(marked("reach - 6| mm"))).toBe("6 mm");
    expect(about(marked("re|ach - 6 mm"))).toBe("reach");
    expect(said(marked("2 |* reach / (1 mm)"))).toBe("`2 * reach` = 260 mm = 10.2362 in");
  });

  it("of an expression over several lines are told in one", () => {
    expect(said(`${LETS}let end = (reach # far\n |- 6 mm)`)).toContain("`reach - 6 mm` = 124 mm");
  });

  it("are not told where there are none: plain numbers, mistakes", () => {
    expect(hover("hole ring |4 at radius 40 mm diameter 6 mm")).toBeNull();
    expect(hover("let a = |b")).toBeNull();
    expect(hover("let a = 1 mm |+ 3 deg")).toBeNull();
  });
});

describe("lets", () => {
  it("are told with value, definition, bounds and comment, at the name and where it is used", () => {
    const told = "`waist` = 24 mm = 0.944882 in\n\n```bar\nlet waist = 24 mm from 20 mm to 40 mm\n```";
    expect(said(`${LETS}thickness wai|st`)).toBe(
      `${told}\n\nBounds: 20 mm = 0.787402 in to 40 mm = 1.5748 in`,
    );
    expect(about(`${LETS}thickness wai|st`)).toBe("waist");
    expect(said(LETS.replace("let waist", "let wa|ist"))).toContain("Bounds");
    expect(said(`${LETS}thickness reach|`)).toContain("spin axis to the tip");
  });

  it("are those of the variant they stand in", () => {
    const inVariant = `${LETS}variant "far" { reach = 150 mm waist = re|ach / 5 }`;
    expect(said(inVariant)).toContain("`reach` = 150 mm");
    expect(said(inVariant)).toContain("Variant `far`: `reach = 150 mm`");
    expect(said(`${LETS}variant "far" { reach = 150 mm waist = reach |/ 5 }`)).toContain("= 30 mm");
    expect(said(`${LETS}thickness re|ach\nvariant "far" { reach = 150 mm }`)).toContain("`reach` = 130 mm");
    expect(said(`${LETS}thickness re|ach\nvariant "far" { reach = 150 mm }`, "far")).toContain(
      "`reach` = 150 mm",
    );
  });

  it("without a value say so; pi and functions are explained", () => {
    expect(said("let a = b\nthickness |a")).toContain("`a` has no value");
    expect(said("let a = p|i * 2 mm")).toContain("3.14159");
    const call = said(`${LETS}let a = hy|pot(30 mm, 40 mm)`);
    expect(call).toContain("`hypot(30 mm, 40 mm)` = 50 mm");
    expect(call).toContain("root of the sum of the squares");
  });
});

describe("steps, as they are cut", () => {
  const path = (line: string) =>
    `${BAR}outline {\n from (60 mm, -20 mm)\n ${line}\n line (-60 mm, 0 mm)\n close\n}\nbore 20 mm\n`;

  it("lines: length, direction and ends", () => {
    const told = said(path("li|ne (60 mm, 20 mm)"));
    expect(told).toContain("Line: 40 mm (1.5748 in) at 90°");
    expect(told).toContain("From (60 mm, -20 mm) to (60 mm, 20 mm)");
    expect(told).toContain("**line**");
  });

  it("corners taken off", () => {
    expect(said(path("li|ne (60 mm, 20 mm) bevel 5 mm"))).toContain("Line: 35 mm");
    expect(said(path("line (60 mm, 20 mm) bev|el 5 mm"))).toContain("From (60 mm, 15 mm) to ");
    expect(said(path("line (60 mm, 20 mm) rou|nd 5 mm"))).toContain("Arc: radius 5 mm");
  });

  it("arcs: radius, sweep, side and centre", () => {
    const told = said(path("ar|c (60 mm, 20 mm) radius 20 mm turning left"));
    expect(told).toContain("Arc: radius 20 mm (0.7874 in), 180° to the left, 62.832 mm");
    expect(told).toContain("about (60 mm, 0 mm)");
  });

  it("in the direction they are written, whichever way the loop runs", () => {
    const clockwise = `${BAR}outline {\n from (60 mm, 20 mm)\n li|ne (60 mm, -20 mm) round 3 mm\n line (-60 mm, 0 mm)\n close\n}\n`;
    expect(said(clockwise)).toContain("at -90°");
    expect(said(clockwise.replace("li|ne", "line").replace("round", "rou|nd"))).toContain(
      // 3 mm × tan(99.46°/2) short of the corner
      "From (60 mm, -16.459 mm) to",
    );
    expect(said(clockwise.replace("li|ne", "line").replace("round", "rou|nd"))).toContain("to the right");
  });

  it("of a repeated path the written one, of a spiral all its arcs", () => {
    const repeated = `${BAR}outline repeat 2 {\n from (60 mm @ 0 deg)\n line (50 mm @ 0 deg)\n spi|ral (60 mm @ 180 deg) turning left\n}\n`;
    expect(said(repeated)).toMatch(/\d+ arcs, together 17\d/);
    expect(said(repeated)).toContain("From (50 mm, 0 mm) to (-60 mm, 0 mm)");
  });

  it("close goes back to the start; from is where it starts", () => {
    expect(said(`${BAR}${TRIANGLE.replace("close", "clo|se")}`)).toContain(
      "From (-60 mm, 0 mm) to (60 mm, -20 mm)",
    );
    expect(said(`${BAR}${TRIANGLE.replace("from", "fr|om")}`)).toContain("(60 mm, -20 mm)");
  });

  it("are explained even if nothing could be built", () => {
    expect(said("outline { li|ne (1 mm, 2 mm) }")).toContain("**line**: A straight line to a point.");
  });

  it("points: place, radius and direction", () => {
    expect(said(path("line |(60 mm, 20 mm)"))).toBe(
      "(60 mm, 20 mm)\n\n63.246 mm (2.49 in) from the spin axis at 18.43°",
    );
    expect(said(path("line |by (0 mm, 40 mm)"))).toContain("(60 mm, 20 mm)");
    expect(said(path("line (40 mm |@ 90 deg)"))).toContain("(0 mm, 40 mm)");
  });
});

describe("statements", () => {
  it("holes: size and radius from the axis", () => {
    expect(said(`${BAR}${TRIANGLE}ho|le (0 mm, -6 mm) diameter 5 mm`)).toContain(
      "Diameter 5 mm (0.19685 in), at (0 mm, -6 mm)\n\n6 mm (0.23622 in) from the spin axis at -90°",
    );
    expect(said(`${BAR}${TRIANGLE}ho|le ring 4 at radius 15 mm diameter 5 mm`)).toContain(
      "4 holes: diameter 5 mm",
    );
    expect(said(`${BAR}${TRIANGLE}sl|ot (20 mm, 0 mm) to (30 mm, 0 mm) width 4 mm`)).toContain(
      "length 14 mm",
    );
    expect(said(`${BAR}${TRIANGLE.replace("bore", "bo|re")}`)).toContain("Diameter 20 mm");
  });

  it("outlines: how many lines and arcs, how long", () => {
    expect(said(`${BAR}${TRIANGLE.replace("outline", "out|line")}`)).toContain("3 lines and 0 arcs");
  });

  it("materials with their sources, and what the file says instead", () => {
    const told = said("material s7|_tool_steel\ndensity 7700 kg/m^3");
    expect(told).toContain("- Density: 7760 kg/m³ (makers' data sheets)");
    expect(told).toContain("sets the density to 7700 kg/m³");
    expect(hover("material unheard|_of")).toBeNull();
  });

  it("words of the language with an example", () => {
    expect(said("thick|ness 12 mm")).toBe(
      "**thickness**: Thickness of the plate.\n\n```bar\nthickness 12 mm\n```",
    );
    expect(about("spin 4200 rpm c|cw")).toBe("ccw");
    expect(said(`hole ring 4 at radius 40 mm diameter 6 mm fr|om 45 deg`)).toContain(
      "direction of the first",
    );
    expect(said(`target round| 5 mm`)).toContain("a rounded edge");
  });

  it("nothing in comments, in strings, between statements and on nonsense", () => {
    for (const marked of ["# thick|ness", 'bar "thick|ness"', "\n|\nbore 20 mm", "nonsen|se 12 mm", "|"])
      expect(hover(marked), marked).toBeNull();
  });
});

describe("aims", () => {
  const aim = "let t = 12 mm from 6 mm to 20 mm\naim least mass keeping inertia >= 1e-4 kg*m^2 by t\n";
  const at = (marked: string) => said(`${BAR}${TRIANGLE}${aim.replace(marked.replace("|", ""), marked)}`);

  it("tell how goals and limits stand now", () => {
    expect(at("least ma|ss")).toContain("**Mass**: Area × thickness × density.");
    expect(at("least ma|ss")).toContain("Now 196.5 g.");
    expect(at("a|im")).toContain("Now 196.5 g.");
    expect(at("inert|ia")).toMatch(/Holds: .* required at least 1e-4 kg·m²|Holds: /);
    expect(at("kee|ping")).toContain("Limits that the aim has to keep");
    expect(at("by t|")).toContain("Bounds: 6 mm");
  });
});

describe("requirements", () => {
  it("tell the value, the limit and the margin", () => {
    const told = said(`${BAR}${TRIANGLE}require ma|ss <= 1 kg`);
    expect(told).toContain(FIGURES.find(({ key }) => key === "massKg")?.meaning);
    // (½·40·120 − π·10²) mm² × 12 mm × 7850 kg/m³
    expect(told).toContain("Holds: 196.5 g, required at most 1 kg, 803.5 g to spare.");
    expect(said(`${BAR}${TRIANGLE}require mass <= 100 g`.replace("require", "req|uire"))).toContain(
      "**Fails**: 196.5 g, required at most 100 g, 96.49 g amiss.",
    );
  });

  it("and balance grades", () => {
    expect(said(`${BAR}${TRIANGLE}spin 3000 rpm ccw\nrequire balance <= G4|0`)).toContain(
      "required at most G40",
    );
  });

  it("say that a value is not known", () => {
    expect(said("thickness 12 mm\nrequire ma|ss <= 1 kg")).toContain(
      "Not known yet; required: at most 1 kg.",
    );
  });
});

describe("words of a file", () => {
  it("are never taken for markdown", () => {
    expect(plainText("*a* [b](c) <img> `d` _e_")).toBe("\\*a\\* \\[b\\](c) &#60;img&#62; \\`d\\` \\_e\\_");
    expect(plainText("# head")).toBe("\\# head");
    expect(plainText("1. one")).toBe("1\\. one");
    expect(plainText("Ti-6Al-4V at 315 °C (plate)")).toBe("Ti-6Al-4V at 315 °C (plate)");
  });
});
