/** Steering and blows as a file tells of them, against the formulas worked out here and what the models keep. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { CAUTIONS } from "../../geometry/files/cautions.ts";
import { analysisJson } from "../../geometry/files/json.ts";
import { toMarkdown } from "../../geometry/files/markdown.ts";
import { steeringTable } from "../../geometry/files/steering-table.ts";
import { expectClose } from "../support/close-to.ts";

/** A balanced plate of 240 × 50 × 10 mm without a bore to speak of, at 6000 rpm. */
const BAR = `thickness 10 mm
density 7850 kg/m^3
outline { from (120 mm, -25 mm) line (120 mm, 25 mm) line (-120 mm, 25 mm) line (-120 mm, -25 mm) close }
bore 20 mm
spin 6000 rpm ccw
`;
const MASS = 0.24 * 0.05 * 0.01 * 7850 - Math.PI * 0.01 ** 2 * 0.01 * 7850;
const INERTIA = (0.942 * (0.24 ** 2 + 0.05 ** 2)) / 12 - (Math.PI * 0.01 ** 2 * 0.01 * 7850 * 0.01 ** 2) / 2;
const SPIN = 200 * Math.PI;
const RADIUS = Math.hypot(0.12, 0.025);
const G = 9.80665;

const ROBOT =
  "mass 13.6 kg track 300 mm centre_height 70 mm axle_ahead 160 mm axle_height 150 mm edge up ground_speed 4 m/s";

function figuresOf(text: string, bar = BAR) {
  const json = analysisJson(analyse(readSource(`${bar}${text}`)));
  const group = (name: "robot" | "opponent") => json[name] as Record<string, unknown>;
  return { robot: group("robot"), opponent: group("opponent"), problems: json.problems };
}

const number = (value: unknown): number => (typeof value === "number" ? value : Number.NaN);

/** What a robot's and an opponent's block are judged by. */
function problems(text: string, bar = BAR): readonly string[] {
  return figuresOf(text, bar)
    .problems.filter(({ code }) => !["relief-too-small", "struck-beside-teeth"].includes(code))
    .map(({ severity, code, message }) => `${severity} ${code}: ${message}`);
}

describe("steering", () => {
  const { robot } = figuresOf(`robot { ${ROBOT} centre_height_inverted 85 mm spin_up 4 s }`);
  const momentum = INERTIA * SPIN;
  const degrees = (roll: number) => (((13.6 * G * 0.15) / roll) * 180) / Math.PI;

  it("is m·g·w/2 over the roll of each rad/s, on the spot, driving and on its back", () => {
    expectClose(number(robot["spotYawDegPerS"]), degrees(momentum), 1e-9);
    expectClose(number(robot["drivingYawDegPerS"]), degrees(Math.abs(13.6 * 4 * 0.07 - momentum)), 1e-9);
    expectClose(number(robot["invertedYawDegPerS"]), degrees(13.6 * 4 * 0.085 + momentum), 1e-9);
    expectClose(number(robot["evenSpeedMPerS"]), momentum / (13.6 * 0.07), 1e-9);
    expect([robot["spotLifts"], robot["invertedLifts"]]).toEqual(["outer", "inner"]);
  });

  it("pitches by I·ω over the time, down in front with the edge moving up", () => {
    expectClose(number(robot["spinUpPitchNM"]), -momentum / 4, 1e-9);
    // The rear is lifted about what it stands on in front, below the axle where nothing is said.
    expectClose(number(robot["leastSpinUpS"]), momentum / (13.6 * G * 0.16), 1e-9);
    const down = figuresOf(
      `robot { ${ROBOT.replace("edge up", "edge down")} spin_up 4 s rear_wheels 90 mm }`,
    ).robot;
    expectClose(number(down["spinUpPitchNM"]), momentum / 4, 1e-9);
    expectClose(number(down["leastSpinUpS"]), momentum / (13.6 * G * 0.09), 1e-9);
  });

  it("has a chart from standing to the ground speed, and words", () => {
    const chart = robot["steering"] as readonly Record<string, number>[];
    expect(chart.map((point) => point["groundMPerS"])).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4]);
    expectClose(chart[8]?.["edgeUpDegPerS"], number(robot["drivingYawDegPerS"]), 1e-12);
    expectClose(chart[8]?.["edgeDownDegPerS"], degrees(13.6 * 4 * 0.07 + momentum), 1e-9);
    expect(robot["steeringWords"]).toContain("front edge moving up");
  });

  it("is known as far as what it takes is said", () => {
    const few = figuresOf("robot { mass 13.6 kg track 300 mm centre_height 70 mm edge down }").robot;
    expectClose(number(few["spotYawDegPerS"]), degrees(momentum), 1e-9);
    expect([few["drivingYawDegPerS"], few["leastSpinUpS"], few["steering"]]).toEqual([null, null, null]);
  });
});

describe("a blow", () => {
  const OPPONENT = "opponent { mass 13.6 kg restitution 0.3 contact_time 0.5 ms }";

  it("upwards, level with the axle, on a robot held down by the floor, is that of a bar on a pin", () => {
    const { opponent } = figuresOf(`robot { ${ROBOT} bolts 6 }\n${OPPONENT}`);
    const effective = 1 / (RADIUS ** 2 / INERTIA + 1 / 13.6);
    const impulse = effective * 1.3 * RADIUS * SPIN;
    expectClose(number(opponent["strikeMPerS"]), RADIUS * SPIN, 1e-9);
    expectClose(number(opponent["impulseNS"]), impulse, 1e-9);
    expectClose(number(opponent["effectiveMassKg"]), effective, 1e-9);
    expectClose(number(opponent["spinLeftShare"]), 1 - (impulse * RADIUS) / INERTIA / SPIN, 1e-9, 1);
    expectClose(number(opponent["opponentUpMPerS"]), impulse / 13.6, 1e-9);
    expectClose(number(opponent["opponentRiseMm"]), ((impulse / 13.6) ** 2 / (2 * G)) * 1000, 1e-9);
    expectClose(number(opponent["axleForceN"]), impulse / 0.5e-3, 1e-9);
    expectClose(number(opponent["boltForceN"]), impulse / 0.5e-3 / 6, 1e-9);
    expectClose(number(opponent["frontLiftNMS"]), -impulse * (0.16 + 0.16), 1e-9);
    const before = (INERTIA * SPIN ** 2) / 2;
    const after = before * number(opponent["spinLeftShare"]) ** 2;
    const spent = number(opponent["passedOnJ"]) + number(opponent["lostJ"]) + number(opponent["ownRobotJ"]);
    expectClose(before - after, spent, 1e-9);
  });

  it("tells what was taken for granted, and nothing where all is said", () => {
    const bare = figuresOf(`robot { ${ROBOT} }\n${OPPONENT}`).opponent;
    expect(bare["assumed"]).toBe("box 320 × 140 mm, rear wheels 160 mm, front 160 mm");
    const said = `robot { ${ROBOT} pitch_inertia 0.2 kg*m^2 rear_wheels 130 mm front_wheels 90 mm }`;
    expect(figuresOf(`${said}\n${OPPONENT}`).opponent["assumed"]).toBe("nothing");
  });

  it("takes a lighter blow for more that gives way, and the same for a box that is as hard to pitch", () => {
    const impulse = (robot: string) =>
      number(figuresOf(`robot { ${robot} }\n${OPPONENT}`).opponent["impulseNS"]);
    const tipping = `${ROBOT} rear_wheels 60 mm front_wheels 60 mm`;
    expect(impulse(tipping)).toBeLessThan(impulse(ROBOT));
    const box = 12.6 * 0 + ((13.6 - MASS) * (0.4 ** 2 + 0.12 ** 2)) / 12;
    expectClose(
      impulse(`${tipping} length 400 mm height 120 mm`),
      impulse(`${tipping} pitch_inertia ${box} kg*m^2`),
      1e-9,
    );
  });

  it("is harder against one that is braced, of which no flight is told", () => {
    const free = figuresOf(`robot { ${ROBOT} }\n${OPPONENT}`).opponent;
    const braced = figuresOf(`robot { ${ROBOT} }\nopponent { restitution 0.3 stands braced }`).opponent;
    expect(number(braced["impulseNS"])).toBeGreaterThan(number(free["impulseNS"]));
    expect([braced["opponentUpMPerS"], braced["opponentRiseMm"], braced["axleForceN"]]).toEqual([
      null,
      null,
      null,
    ]);
    expect(braced["passedOnJ"]).toBe(0);
  });

  it("below the axle drives the opponent away, and closing adds to it", () => {
    const struck = (more: string) =>
      figuresOf(`robot { ${ROBOT} }\nopponent { mass 13.6 kg restitution 0.3 struck_at 60 mm ${more} }`)
        .opponent;
    expect(number(struck("")["opponentAheadMPerS"])).toBeGreaterThan(1);
    expect(number(struck("")["ownAheadMPerS"])).toBeLessThan(-0.5);
    // The blow leans ahead by as much as the tooth is below the axle: 90 mm of its radius.
    expectClose(number(struck("closing 3 m/s")["strikeMPerS"]), RADIUS * SPIN + (3 * 0.09) / RADIUS, 1e-9);
  });

  it("by a bar out of balance has a radius of percussion, the same drawn the other way round", () => {
    const heavy = BAR.replace("bore 20 mm", "bore 20 mm\nhole (-80 mm, 10 mm) diameter 20 mm");
    const mirrored = heavy.replace("(-80 mm, 10 mm)", "(-80 mm, -10 mm)").replace("ccw", "cw");
    const text = `robot { ${ROBOT} }\n${OPPONENT}`;
    const [own, other] = [figuresOf(text, heavy).opponent, figuresOf(text, mirrored).opponent];
    expect(number(own["percussionRadiusMm"])).toBeGreaterThan(500);
    for (const key of ["percussionRadiusMm", "impulseNS", "axleImpulseNS"])
      expectClose(number(own[key]), number(other[key]), 1e-2);
    expect(figuresOf(text).opponent["percussionRadiusMm"]).toBeNull();
  });
});

describe("any robot and opponent that the language lets through", () => {
  const size = (most: number, least = -12) =>
    fc.double({ min: least, max: Math.log10(most), noNaN: true }).map((x) => 10 ** x);
  const lengths = ["track", "centre_height", "axle_ahead", "length", "height", "rear_wheels", "front_wheels"];
  const word = (name: string, unit: string, most: number, least = -12) =>
    size(most, least).map((x) => `${name} ${x.toFixed(15)} ${unit}`);
  const settings = fc.tuple(
    fc
      .oneof(size(1e5), fc.constantFrom(MASS * (1 + 1e-15), MASS * (1 + 1e-9)))
      .map((x) => `mass ${x.toFixed(18)} kg`),
    ...lengths.map((name) => word(name, "mm", 1e4, 0)),
    fc.double({ min: 122.6, max: 1e4, noNaN: true }).map((x) => `axle_height ${x} mm`),
    fc.constantFrom("edge up", "edge down"),
    fc.constantFrom("", "pitch_inertia 0.000001 kg*m^2", "pitch_inertia 1000000 kg*m^2"),
  );
  const struck = fc.tuple(
    word("mass", "kg", 1e5),
    fc.constantFrom("restitution 0", "restitution 1", "restitution 0.3"),
    fc.constantFrom("", "stands braced"),
    fc.double({ min: 0, max: 100, noNaN: true }).map((x) => `closing ${x} m/s`),
    word("contact_time", "ms", 1000),
  );

  it("has finite figures or none, throws nothing, and mostly has figures", () => {
    let [tried, told] = [0, 0];
    fc.assert(
      fc.property(settings, struck, fc.integer({ min: 2, max: 9 }), (robot, opponent, said) => {
        // The optional lengths are left out now and then.
        const text = robot.filter((_, i) => i < said || i > 7).join(" ");
        const { opponent: figures } = figuresOf(`robot { ${text} }\nopponent { ${opponent.join(" ")} }`);
        tried += 1;
        if (figures["impulseNS"] !== null) told += 1;
        for (const value of Object.values(figures))
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 300 },
    );
    // A mass below the bar's is as likely as one above it.
    expect(told / tried).toBeGreaterThan(0.15);
  });
});

describe("where people read it", () => {
  const analysis = analyse(readSource(`${BAR}robot { ${ROBOT} }\nopponent { mass 13.6 kg restitution 0.3 }`));

  it("has the chart as a table and the words, and the cautions with every figure of a blow", () => {
    const page = toMarkdown(analysis, "mm");
    const degPerS = analysis.assessment.fight.robot?.steering?.[8]?.edgeDownDegPerS ?? Number.NaN;
    expect(page).toContain("Where a wheel lifts in a turn");
    expect(page.replaceAll(/ +/g, " ")).toMatch(
      new RegExp(`\\| 4 \\| [\\d.]+ \\| ${degPerS.toPrecision(4)} \\|`),
    );
    expect(page).toContain("leans it into the turn");
    expect(page).toContain("Impulse of the blow");
    for (const caution of CAUTIONS) expect(page).toContain(caution);
    expect(analysisJson(analysis).cautions).toEqual(CAUTIONS);
  });

  it("has miles an hour in inches, and no table without a ground speed", () => {
    expect(steeringTable(analysis, "in")).toMatchObject({ speedUnit: "mph", rows: { length: 9 } });
    const still = analyse(readSource(`${BAR}robot { mass 9 kg track 300 mm centre_height 70 mm edge down }`));
    expect(steeringTable(still, "mm")).toMatchObject({ rows: [], words: expect.stringContaining("add up") });
    expect(steeringTable(analyse(readSource(BAR)), "mm")).toBeNull();
    expect(toMarkdown(analyse(readSource(BAR)), "mm")).not.toContain("wheel lifts");
  });

  it("tells that no wheel lifts where bar and cornering cancel", () => {
    const even = (INERTIA * SPIN) / (13.6 * 0.07);
    const text = ROBOT.replace("ground_speed 4 m/s", `ground_speed ${even} m/s`);
    const last = steeringTable(analyse(readSource(`${BAR}robot { ${text} }`)), "mm")?.rows[8];
    expect(last?.up === "none lifts" || Number(last?.up) > 1e9).toBe(true);
  });
});

describe("what is judged of robot and opponent", () => {
  const OPPONENT = "opponent { mass 13.6 kg restitution 0.3 }";

  it("is nothing where all is said and can be", () => {
    expect(problems(`robot { ${ROBOT} }\n${OPPONENT}`)).toEqual([]);
    expect(problems("")).toEqual([]);
  });

  it("is what is missing", () => {
    expect(problems("robot { mass 13.6 kg track 300 mm edge up }")).toEqual([
      "information robot-unsaid: The robot does not say centre_height, axle_ahead and axle_height: without, steering or a blow cannot be worked out.",
    ]);
    expect(problems("opponent { mass 13.6 kg }")).toEqual([
      "information robot-unsaid: The blow cannot be worked out without a robot that strikes it and restitution.",
    ]);
    expect(problems(`robot { ${ROBOT} }\nopponent { restitution 0 stands braced }`)).toEqual([]);
  });

  it("is a robot that weighs no more than its bar", () => {
    const light = figuresOf(`robot { ${ROBOT.replace("13.6 kg", "900 g")} }\n${OPPONENT}`);
    expect(problems(`robot { ${ROBOT.replace("13.6 kg", "900 g")} }\n${OPPONENT}`)).toEqual([
      "error robot-too-light: The robot weighs 900 g, but its bar alone 917.3 g; its mass counts the bar.",
    ]);
    expect([light.robot["spotYawDegPerS"], light.opponent["impulseNS"]]).toEqual([null, null]);
  });

  it("is an axle so low that the bar would strike the floor", () => {
    expect(problems(`robot { ${ROBOT.replace("axle_height 150", "axle_height 100")} }`)).toEqual([
      "error bar-in-floor: The bar reaches 122.6 mm from its axle, which is 100 mm above the floor: it would strike the floor.",
    ]);
  });

  it("is a strike where the bar does not reach", () => {
    const high = "opponent { mass 13.6 kg restitution 0.3 struck_at 300 mm }";
    expect(problems(`robot { ${ROBOT} }\n${high}`)).toEqual([
      "error strike-out-of-reach: The bar reaches from 27.42 mm to 272.6 mm above the floor; it cannot strike at this height.",
    ]);
    expect(figuresOf(`robot { ${ROBOT} }\n${high}`).robot["spotYawDegPerS"]).not.toBeNull();
  });

  it("is every value of the wrong kind or beyond reason", () => {
    const text =
      "robot { mass 13.6 mm track 0 mm edge up bolts 0 }\nopponent { mass 2 kg restitution 1.2 contact_time 0 s }";
    const told = problems(text).filter((problem) => problem.startsWith("error"));
    expect(told).toEqual([
      "error wrong-unit: The mass of the robot is a mass such as 1.6 kg, but '13.6 mm' is a length.",
      "error out-of-range: The track has to be at least 1 mm; this is 0 mm.",
      "error out-of-range: The count of bolts has to be a whole number from 1 to 100; this is 0.",
      "error out-of-range: The restitution has to be at most 1; this is 1.2. They would part with more energy than they met with.",
      "error out-of-range: The contact time has to be more than 0 ms; this is 0 s. A blow that takes no time has no finite force.",
    ]);
  });
});
