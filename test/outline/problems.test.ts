/**
 * Every problem of the outline: a text that has it, the place it points at, what it says, and that each fix offered
 * clears it; and beside it a text as near as can be that does not have it.
 */
import { describe, expect, it } from "vitest";
import type { ProblemCode } from "../../geometry/language/problem-codes.ts";
import { barText, codesOf, fixedTexts, rangeText, study } from "./study.ts";

interface Case {
  readonly what: string;
  readonly code: ProblemCode;
  readonly bad: string;
  readonly good: string;
  /** The text that the problem underlines. */
  readonly at: string;
  readonly says: RegExp;
  readonly fixes: number;
  /** Other problems that the same text has for other causes. */
  readonly also?: readonly ProblemCode[];
}

const box = (steps: string): string => `outline { from (-50 mm, -20 mm) ${steps} }`;
const square =
  "outline { from (-50 mm, -50 mm) line (50 mm, -50 mm) line (50 mm, 50 mm) line (-50 mm, 50 mm) close }";
const disc = "outline repeat 2 { from (50 mm, 0 mm) arc (-50 mm, 0 mm) about (0 mm, 0 mm) turning left }";
const ending = "line (50 mm, 20 mm) line (-50 mm, 20 mm) close";

const BUILD: readonly Case[] = [
  {
    what: "a radius under half the distance",
    code: "arc-cannot-reach",
    bad: barText(box(`arc (50 mm, -20 mm) radius 49.9 mm turning left ${ending}`)),
    good: barText(box(`arc (50 mm, -20 mm) radius 50 mm turning left ${ending}`)),
    at: "49.9 mm",
    says: /ends are 100 mm apart.*at least 50 mm, not 49.9 mm/,
    fixes: 1,
  },
  {
    what: "a radius in inches, with the fix rounded up in inches",
    code: "arc-cannot-reach",
    bad: barText(
      "outline { from (-3 in, -1 in) arc (3.333 in, -1 in) radius 3 in turning left line (3 in, 1 in) line (-3 in, 1 in) close }",
    ),
    good: barText(
      "outline { from (-3 in, -1 in) arc (3.333 in, -1 in) radius 3.17 in turning left line (3 in, 1 in) line (-3 in, 1 in) close }",
    ),
    at: "3 in",
    says: /6.333 in apart.*at least 3.17 in/,
    fixes: 1,
  },
  {
    what: "an arc through a point in line with its ends",
    code: "arc-undefined",
    bad: barText(box(`arc (50 mm, -20 mm) through (0 mm, -20 mm) round 2 mm ${ending}`)),
    good: barText(box(`arc (50 mm, -20 mm) through (0 mm, -20.1 mm) round 2 mm ${ending}`)),
    at: "arc (50 mm, -20 mm) through (0 mm, -20 mm) round 2 mm",
    says: /\(0 mm, -20 mm\) lies in line/,
    fixes: 1,
  },
  {
    what: "an arc through its own start",
    code: "arc-undefined",
    bad: barText(box(`arc (50 mm, -20 mm) through (-50 mm, -20 mm) ${ending}`)),
    good: barText(box(`arc (50 mm, -20 mm) through (-49 mm, -21 mm) ${ending}`)),
    at: "arc (50 mm, -20 mm) through (-50 mm, -20 mm)",
    says: /one of its own ends/,
    fixes: 1,
  },
  {
    what: "an arc through a point, back to its own start",
    code: "arc-undefined",
    bad: barText(box(`line (50 mm, -20 mm) arc (50 mm, -20 mm) through (60 mm, 0 mm) ${ending}`)),
    good: barText(box(`line (50 mm, -20 mm) arc (50 mm, -15 mm) through (60 mm, -18 mm) ${ending}`)),
    at: "arc (50 mm, -20 mm) through (60 mm, 0 mm)",
    says: /ends where it starts/,
    fixes: 1,
  },
  {
    what: "an arc about its own start",
    code: "arc-undefined",
    bad: barText(box(`arc (50 mm, -20 mm) about (-50 mm, -20 mm) turning left ${ending}`)),
    good: barText(box(`arc (50 mm, -20 mm) about (0 mm, -20 mm) turning left ${ending}`)),
    at: "(-50 mm, -20 mm)",
    says: /about its own start/,
    fixes: 0,
  },
  {
    what: "a centre that is not equally far from both ends",
    code: "centre-off",
    bad: barText(box(`arc (50 mm, -20 mm) about (0.3 mm, 10 mm) turning left ${ending}`)),
    good: barText(box(`arc (50 mm, -20 mm) about (0 mm, 10 mm) turning left ${ending}`)),
    at: "(0.3 mm, 10 mm)",
    says: /58\.567 mm from its start but 58\.0525 mm from its end/,
    fixes: 1,
  },
  {
    what: "a line to where it starts",
    code: "zero-length",
    bad: barText(box(`line (50 mm, -20 mm) line (50 mm, -20 mm) ${ending}`)),
    good: barText(box(`line (50 mm, -20 mm) line (50 mm, -19 mm) ${ending}`)),
    at: "line (50 mm, -20 mm)",
    says: /goes nowhere: it ends at \(50 mm, -20 mm\)/,
    fixes: 1,
  },
  {
    what: "an arc of a radius to where it starts",
    code: "zero-length",
    bad: barText(box(`line (50 mm, -20 mm) arc by (0 mm, 0 mm) radius 5 mm turning left ${ending}`)),
    good: barText(box(`line (50 mm, -20 mm) arc by (0 mm, 8 mm) radius 5 mm turning left ${ending}`)),
    at: "arc by (0 mm, 0 mm) radius 5 mm turning left",
    says: /goes nowhere/,
    fixes: 1,
  },
  {
    what: "a spiral along a ray",
    code: "spiral-undefined",
    bad: barText(
      "outline { from (20 mm, 0 mm) spiral (50 mm, 0 mm) turning left line (0 mm, 60 mm) line (-40 mm, -40 mm) close }",
    ),
    good: barText(
      "outline { from (20 mm, 0 mm) spiral (50 mm @ 1 deg) turning left line (0 mm, 60 mm) line (-40 mm, -40 mm) close }",
    ),
    at: "spiral (50 mm, 0 mm) turning left",
    says: /same direction from the spin axis/,
    fixes: 1,
  },
  {
    what: "a spiral from the spin axis",
    code: "spiral-undefined",
    bad: barText(
      "outline { from (0 mm, 0 mm) spiral (0 mm, 50 mm) turning left line (-40 mm, -40 mm) close }",
      "",
    ),
    good: barText(
      "outline { from (30 mm, 0 mm) spiral (0 mm, 50 mm) turning left line (-40 mm, -40 mm) close }",
    ),
    at: "spiral (0 mm, 50 mm) turning left",
    says: /touches the spin axis/,
    fixes: 0,
  },
  {
    what: "a fillet too large for one side",
    code: "corner-too-large",
    bad: barText(box(`line (50 mm, -20 mm) round 41 mm ${ending}`)),
    good: barText(box(`line (50 mm, -20 mm) round 40 mm ${ending}`)),
    at: "round 41 mm",
    says: /fillet of 41 mm is too large.*at most 40 mm fits/,
    fixes: 1,
  },
  {
    what: "a bevel too large for one side",
    code: "corner-too-large",
    bad: barText(box(`line (50 mm, -20 mm) bevel 4.1 cm ${ending}`)),
    good: barText(box(`line (50 mm, -20 mm) bevel 4 cm ${ending}`)),
    at: "bevel 4.1 cm",
    says: /bevel of 4.1 cm is too large.*at most 4 cm fits/,
    fixes: 1,
  },
  {
    what: "a fillet for which another leaves too little room: the later one is at fault",
    code: "corner-too-large",
    bad: barText(
      box("line (50 mm, -20 mm) round 25 mm line (50 mm, 20 mm) round 16 mm line (-50 mm, 20 mm) close"),
    ),
    good: barText(
      box("line (50 mm, -20 mm) round 25 mm line (50 mm, 20 mm) round 15 mm line (-50 mm, 20 mm) close"),
    ),
    at: "round 16 mm",
    says: /at most 15 mm fits/,
    fixes: 1,
  },
  {
    what: "a fillet for which others leave no room at all",
    code: "corner-too-large",
    bad: barText(
      box("line (50 mm, -20 mm) round 40 mm line (50 mm, 20 mm) round 1 mm line (-50 mm, 20 mm) close"),
    ),
    good: barText(
      box("line (50 mm, -20 mm) round 39 mm line (50 mm, 20 mm) round 1 mm line (-50 mm, 20 mm) close"),
    ),
    at: "round 1 mm",
    says: /no room/,
    fixes: 1,
  },
  {
    what: "a fillet at every corner of a repeated path: all copies change with the fix",
    code: "corner-too-large",
    bad: barText("outline repeat 6 { from (40 mm, 0 mm) line (40 mm @ 60 deg) round 35 mm }"),
    good: barText("outline repeat 6 { from (40 mm, 0 mm) line (40 mm @ 60 deg) round 34.64 mm }"),
    at: "round 35 mm",
    says: /at most 34\.6 mm fits/,
    fixes: 1,
  },
  {
    what: "a fillet where the path runs straight on",
    code: "corner-impossible",
    bad: barText(box(`line (0 mm, -20 mm) round 3 mm line (50 mm, -20 mm) ${ending}`)),
    good: barText(box(`line (0 mm, -21 mm) round 3 mm line (50 mm, -20 mm) ${ending}`)),
    at: "round 3 mm",
    says: /no corner to round at \(0 mm, -20 mm\).*smoothly/,
    fixes: 1,
  },
  {
    what: "a bevel where an arc leaves a line smoothly",
    code: "corner-impossible",
    bad: barText(
      box(
        `line (50 mm, -20 mm) bevel 3 mm arc (50 mm, 20 mm) radius 20 mm turning left line (-50 mm, 20 mm) close`,
      ),
    ),
    good: barText(
      box(
        `line (50 mm, -20 mm) bevel 3 mm arc (50 mm, 20 mm) radius 21 mm turning left line (-50 mm, 20 mm) close`,
      ),
    ),
    at: "bevel 3 mm",
    says: /no corner to bevel/,
    fixes: 1,
  },
  {
    what: "a corner that is treated twice",
    code: "corner-impossible",
    bad: barText(
      "outline { from (-50 mm, -20 mm) round 3 mm line (50 mm, -20 mm) line (50 mm, 20 mm) line (-50 mm, 20 mm) close round 4 mm }",
    ),
    good: barText(
      "outline { from (-50 mm, -20 mm) round 3 mm line (50 mm, -20 mm) line (50 mm, 20 mm) line (-50 mm, 20 mm) close }",
    ),
    at: "round 3 mm",
    says: /treated twice/,
    fixes: 1,
  },
  {
    what: "a loop without its end",
    code: "loop-not-closed",
    bad: barText(box("line (50 mm, -20 mm) line (50 mm, 20 mm) line (-50 mm, 20 mm)")),
    good: barText(box("line (50 mm, -20 mm) line (50 mm, 20 mm) line (-50 mm, 20 mm) line (-50 mm, -20 mm)")),
    at: "line (-50 mm, 20 mm)",
    says: /ends at \(-50 mm, 20 mm\), 40 mm from its start at \(-50 mm, -20 mm\)/,
    fixes: 1,
  },
  {
    what: "a cutout without its end, before a comment",
    code: "loop-not-closed",
    bad: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm)\n line (30 mm, 20 mm)\n line (30 mm, 30 mm) # back\n}",
    ),
    good: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm)\n line (30 mm, 20 mm)\n line (30 mm, 30 mm) close # back\n}",
    ),
    at: "line (30 mm, 30 mm)",
    says: /not closed/,
    fixes: 1,
  },
  {
    what: "a path that draws nothing",
    code: "loop-not-closed",
    bad: barText(square, "bore 5 mm\ncutout { from (20 mm, 20 mm) close }"),
    good: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm) line (30 mm, 20 mm) line (30 mm, 30 mm) close }",
    ),
    at: "from (20 mm, 20 mm)",
    says: /draws nothing/,
    fixes: 0,
  },
  {
    what: "a repeated path that ends elsewhere",
    code: "repeat-does-not-fit",
    bad: barText("outline repeat 3 { from (60 mm, 0 mm) line (30 mm @ 60 deg) line (60 mm @ 119 deg) }"),
    good: barText("outline repeat 3 { from (60 mm, 0 mm) line (30 mm @ 60 deg) line (60 mm @ 120 deg) }"),
    at: "line (60 mm @ 119 deg)",
    says: /1\.04718 mm from where it must end: its start turned by 120°, \(60 mm @ 120 deg\)/,
    fixes: 2,
  },
  {
    what: "a repeated path that ends elsewhere with a treated arc",
    code: "repeat-does-not-fit",
    bad: barText(
      "outline repeat 2 { from (60 mm, 0 mm) line (0 mm, 30 mm) arc (-50 mm, 0 mm) radius 80 mm turning left round 2 mm }",
    ),
    good: barText(
      "outline repeat 2 { from (60 mm, 0 mm) line (0 mm, 30 mm) arc (-60 mm, 0 mm) radius 80 mm turning left round 2 mm }",
    ),
    at: "arc (-50 mm, 0 mm) radius 80 mm turning left round 2 mm",
    says: /10 mm from where it must end: its start turned by 180°, \(-60 mm, 0 mm\)/,
    fixes: 1,
  },
  {
    what: "a repeated path that is closed although it fits",
    code: "repeat-does-not-fit",
    bad: barText(
      "outline repeat 3 { from (60 mm, 0 mm) line (30 mm @ 60 deg) line (60 mm @ 120 deg) close }",
    ),
    good: barText("outline repeat 3 { from (60 mm, 0 mm) line (30 mm @ 60 deg) line (60 mm @ 120 deg) }"),
    at: "close",
    says: /not closed: it ends at its start turned by 120°/,
    fixes: 1,
  },
  {
    what: "a repeated path that is closed where a line is missing",
    code: "repeat-does-not-fit",
    bad: barText("outline repeat 3 { from (60 mm, 0 mm) line (30 mm @ 60 deg) close round 1 mm }"),
    good: barText(
      "outline repeat 3 { from (60 mm, 0 mm) line (30 mm @ 60 deg) line (60 mm @ 120 deg) round 1 mm }",
    ),
    at: "close round 1 mm",
    says: /not closed/,
    fixes: 1,
  },
  {
    what: "a mirrored path that starts off the axis",
    code: "mirror-off-axis",
    bad: barText("outline mirror x { from (50 mm, 2 mm) line (30 mm, 20 mm) line (-50 mm, 0 mm) }"),
    good: barText("outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-50 mm, 0 mm) }"),
    at: "from (50 mm, 2 mm)",
    says: /starts 2 mm off the x axis/,
    fixes: 1,
  },
  {
    what: "a mirrored path that ends off the axis",
    code: "mirror-off-axis",
    bad: barText("outline mirror y { from (0 mm, -20 mm) line (60 mm, 0 mm) line (3 mm, 20 mm) }"),
    good: barText("outline mirror y { from (0 mm, -20 mm) line (60 mm, 0 mm) line (0 mm, 20 mm) }"),
    at: "line (3 mm, 20 mm)",
    says: /ends 3 mm off the y axis/,
    fixes: 2,
  },
  {
    what: "a mirrored path that is closed although it reaches the axis",
    code: "mirror-off-axis",
    bad: barText("outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-50 mm, 0 mm) close }"),
    good: barText("outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-50 mm, 0 mm) }"),
    at: "close",
    says: /not closed/,
    fixes: 1,
  },
  {
    what: "a mirrored path that is closed where a line to the axis is missing",
    code: "mirror-off-axis",
    bad: barText("outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-50 mm, 20 mm) close }"),
    good: barText(
      "outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-50 mm, 20 mm) line (-50 mm, 0 mm) }",
    ),
    at: "close",
    says: /not closed/,
    fixes: 1,
  },
  {
    what: "a mirrored path that crosses the axis on its way",
    code: "mirror-off-axis",
    bad: barText(
      "outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-30 mm, -20 mm) line (-50 mm, 0 mm) }",
    ),
    good: barText(
      "outline mirror x { from (50 mm, 0 mm) line (30 mm, 20 mm) line (-30 mm, 20 mm) line (-50 mm, 0 mm) }",
    ),
    at: "line (-30 mm, -20 mm)",
    says: /crosses the x axis at \(0 mm, 0 mm\)/,
    fixes: 0,
  },
];

const RING = "bore 5 mm\nhole ring 6 at radius 30 mm diameter";
const LAYOUT: readonly Case[] = [
  {
    what: "an outline that crosses itself",
    code: "loop-crosses-itself",
    bad: barText(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (-50 mm, 20 mm) line (50 mm, 20 mm) close }",
    ),
    good: barText(square),
    at: "close",
    says: /outline crosses or touches itself at \(0 mm, 0 mm\)\./,
    fixes: 0,
  },
  {
    what: "an outline that touches itself with a corner",
    code: "loop-crosses-itself",
    bad: barText(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (50 mm, 20 mm) line (30 mm, -20 mm) line (-50 mm, 60 mm) close }",
    ),
    good: barText(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (50 mm, 20 mm) line (30 mm, -19.9 mm) line (-50 mm, 60 mm) close }",
    ),
    at: "line (30 mm, -20 mm)",
    says: /at \(30 mm, -20 mm\)\./,
    fixes: 0,
  },
  {
    what: "an outline that runs back along itself",
    code: "loop-crosses-itself",
    bad: barText(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (20 mm, -20 mm) line (20 mm, 20 mm) line (-50 mm, 20 mm) close }",
    ),
    good: barText(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (20 mm, -19 mm) line (20 mm, 20 mm) line (-50 mm, 20 mm) close }",
    ),
    at: "line (20 mm, -20 mm)",
    says: /at \(20 mm, -20 mm\)\./,
    fixes: 0,
  },
  {
    what: "an outline there and back again",
    code: "loop-crosses-itself",
    bad: barText(
      "outline { from (-50 mm, -20 mm) arc (50 mm, -20 mm) about (0 mm, 10 mm) turning right arc (-50 mm, -20 mm) about (0 mm, 10 mm) turning left }",
    ),
    good: barText(
      "outline { from (-50 mm, -20 mm) arc (50 mm, -20 mm) about (0 mm, 10 mm) turning right arc (-50 mm, -20 mm) about (0 mm, 11 mm) turning right }",
    ),
    at: "arc (-50 mm, -20 mm) about (0 mm, 10 mm) turning left",
    says: /crosses or touches itself/,
    fixes: 0,
  },
  {
    what: "an arc that goes on over its own start",
    code: "loop-crosses-itself",
    bad: barText(
      "outline { from (50 mm, 0 mm) arc (50 mm @ 200 deg) about (0 mm, 0 mm) turning left arc (50 mm @ 20 deg) about (0 mm, 0 mm) turning left line (60 mm, 0 mm) close }",
    ),
    good: barText(
      "outline { from (50 mm, 0 mm) arc (50 mm @ 200 deg) about (0 mm, 0 mm) turning left arc (50 mm @ -20 deg) about (0 mm, 0 mm) turning left line (60 mm, 0 mm) close }",
    ),
    at: "arc (50 mm @ 20 deg) about (0 mm, 0 mm) turning left",
    says: /crosses or touches itself/,
    fixes: 0,
  },
  {
    what: "a cutout that crosses itself",
    code: "loop-crosses-itself",
    bad: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm) line (40 mm, 20 mm) line (20 mm, 40 mm) line (40 mm, 40 mm) close }",
    ),
    good: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm) line (40 mm, 20 mm) line (40 mm, 40 mm) line (20 mm, 40 mm) close }",
    ),
    at: "close",
    says: /cutout crosses or touches itself at \(30 mm, 30 mm\)/,
    fixes: 0,
  },
  {
    what: "copies of a repeated path that cross each other",
    code: "loop-crosses-itself",
    bad: barText(
      "outline repeat 4 { from (50 mm, 0 mm) line (60 mm @ -30 deg) line (60 mm @ 90 deg) line (0 mm, 50 mm) }",
    ),
    good: barText(
      "outline repeat 4 { from (50 mm, 0 mm) line (60 mm @ 30 deg) line (60 mm @ 90 deg) line (0 mm, 50 mm) }",
    ),
    at: "line (60 mm @ 90 deg)",
    says: /and at 7 more places/,
    fixes: 0,
  },
  {
    what: "a spin axis outside",
    code: "axis-outside",
    bad: barText(
      "outline { from (10 mm, -50 mm) line (60 mm, -50 mm) line (60 mm, 50 mm) line (10 mm, 50 mm) close }",
    ),
    good: barText(
      "outline { from (-10 mm, -50 mm) line (60 mm, -50 mm) line (60 mm, 50 mm) line (-10 mm, 50 mm) close }",
    ),
    at: "outline",
    says: /spin axis, \(0 mm, 0 mm\), lies outside/,
    fixes: 0,
  },
  {
    what: "a spin axis on the edge",
    code: "axis-outside",
    bad: barText(
      "outline { from (0 mm, -50 mm) line (60 mm, -50 mm) line (60 mm, 50 mm) line (0 mm, 50 mm) close }",
      "",
    ),
    good: barText(
      "outline { from (-1 mm, -50 mm) line (60 mm, -50 mm) line (60 mm, 50 mm) line (-1 mm, 50 mm) close }",
      "",
    ),
    at: "outline",
    says: /on its edge/,
    fixes: 0,
  },
  {
    what: "a hole over the edge",
    code: "hole-outside",
    bad: barText(square, "bore 5 mm\nhole (50 mm, 0 mm) diameter 10 mm"),
    good: barText(square, "bore 5 mm\nhole (40 mm, 0 mm) diameter 10 mm"),
    at: "hole (50 mm, 0 mm) diameter 10 mm",
    says: /hole does not lie within the outline: 39\.3 mm² of it lies outside/,
    fixes: 0,
  },
  {
    what: "a hole beyond the edge",
    code: "hole-outside",
    bad: barText(square, "bore 5 mm\nhole (80 mm, 0 mm) diameter 10 mm"),
    good: barText(square, "bore 5 mm\nhole (40 mm, 0 mm) diameter 10 mm"),
    at: "hole (80 mm, 0 mm) diameter 10 mm",
    says: /all of it lies outside/,
    fixes: 0,
  },
  {
    what: "a hole that touches the edge from within",
    code: "hole-outside",
    bad: barText(square, "bore 5 mm\nhole (45 mm, 0 mm) diameter 10 mm"),
    good: barText(square, "bore 5 mm\nhole (44.99 mm, 0 mm) diameter 10 mm"),
    at: "hole (45 mm, 0 mm) diameter 10 mm",
    says: /it touches the edge/,
    fixes: 0,
  },
  {
    what: "a bore larger than the bar",
    code: "hole-outside",
    bad: barText(square, "bore 200 mm"),
    good: barText(square, "bore 80 mm"),
    at: "bore 200 mm",
    says: /bore does not lie within/,
    fixes: 0,
  },
  {
    what: "some holes of a ring outside",
    code: "hole-outside",
    bad: barText(
      "outline { from (-50 mm, -20 mm) line (50 mm, -20 mm) line (50 mm, 20 mm) line (-50 mm, 20 mm) close }",
      `${RING} 6 mm`,
    ),
    good: barText(square, `${RING} 6 mm`),
    at: "hole ring 6 at radius 30 mm diameter 6 mm",
    says: /4 of the 6 holes of this ring/,
    fixes: 0,
  },
  {
    what: "holes that overlap",
    code: "holes-touch",
    bad: barText(square, "bore 20 mm\nhole (12 mm, 0 mm) diameter 6 mm"),
    good: barText(square, "bore 20 mm\nhole (14 mm, 0 mm) diameter 6 mm"),
    at: "hole (12 mm, 0 mm) diameter 6 mm",
    says: /This hole overlaps the bore by 2\.77 mm²/,
    fixes: 0,
  },
  {
    what: "holes that touch",
    code: "holes-touch",
    bad: barText(square, "bore 20 mm\nslot (15 mm, 0 mm) to (30 mm, 0 mm) width 10 mm"),
    good: barText(square, "bore 20 mm\nslot (15.1 mm, 0 mm) to (30 mm, 0 mm) width 10 mm"),
    at: "slot (15 mm, 0 mm) to (30 mm, 0 mm) width 10 mm",
    says: /This slot touches the bore/,
    fixes: 0,
  },
  {
    what: "a hole within a cutout written before it",
    code: "holes-touch",
    bad: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm) line (40 mm, 20 mm) line (40 mm, 40 mm) line (20 mm, 40 mm) close }\nhole (30 mm, 30 mm) diameter 5 mm",
    ),
    good: barText(
      square,
      "bore 5 mm\ncutout { from (20 mm, 20 mm) line (40 mm, 20 mm) line (40 mm, 40 mm) line (20 mm, 40 mm) close }\nhole (-30 mm, 30 mm) diameter 5 mm",
    ),
    at: "hole (30 mm, 30 mm) diameter 5 mm",
    says: /overlaps a cutout by 19\.6 mm²/,
    fixes: 0,
  },
  {
    what: "the same hole twice",
    code: "holes-touch",
    bad: barText(square, "bore 5 mm\nhole (30 mm, 0 mm) diameter 5 mm\nhole (30 mm, 0 mm) diameter 5 mm"),
    good: barText(square, "bore 5 mm\nhole (30 mm, 0 mm) diameter 5 mm\nhole (30 mm, 15 mm) diameter 5 mm"),
    at: "hole (30 mm, 0 mm) diameter 5 mm",
    says: /overlaps another hole by 19\.6 mm²/,
    fixes: 0,
  },
  {
    what: "holes of a ring that overlap each other",
    code: "holes-touch",
    bad: barText(square, `${RING} 31 mm`),
    good: barText(square, `${RING} 24 mm`),
    at: "hole ring 6 at radius 30 mm diameter 31 mm",
    says: /overlaps the next hole of its ring by/,
    fixes: 0,
    also: ["thin-bridge"],
  },
  {
    what: "a hole smaller than the plate is thick",
    code: "hole-too-small",
    bad: barText(square, "bore 5 mm\nhole (30 mm, 0 mm) diameter 4.9 mm"),
    good: barText(square, "bore 5 mm\nhole (30 mm, 0 mm) diameter 5 mm"),
    at: "4.9 mm",
    says: /diameter of this hole, 4\.9 mm.*common practice.*5 mm, the thickness/,
    fixes: 1,
  },
  {
    what: "a ring of such holes in inches",
    code: "hole-too-small",
    bad: barText(square, `${RING} 0.19 in`),
    good: barText(square, `${RING} 0.2 in`),
    at: "0.19 in",
    says: /0\.19 in/,
    fixes: 1,
  },
  {
    what: "a slot narrower than the plate is thick",
    code: "hole-too-small",
    bad: barText(square, "bore 5 mm\nslot (20 mm, 0 mm) to (30 mm, 0 mm) width 3 mm"),
    good: barText(square, "bore 5 mm\nslot (20 mm, 0 mm) to (30 mm, 0 mm) width 5 mm"),
    at: "3 mm",
    says: /width of this slot/,
    fixes: 1,
  },
  {
    what: "a bore smaller than the plate is thick",
    code: "hole-too-small",
    bad: barText(square, "bore 4 mm"),
    good: barText(square, "bore 5 mm"),
    at: "4 mm",
    says: /diameter of this bore/,
    fixes: 1,
  },
  {
    what: "little metal between a hole and the edge",
    code: "thin-bridge",
    bad: barText(square, "bore 5 mm\nhole (42.1 mm, 0 mm) diameter 6 mm"),
    good: barText(square, "bore 5 mm\nhole (42 mm, 0 mm) diameter 6 mm"),
    at: "hole (42.1 mm, 0 mm) diameter 6 mm",
    says: /Only 4\.9 mm of metal is left between this hole and the edge, at \(50 mm, 0 mm\).*5 mm, the thickness/,
    fixes: 0,
  },
  {
    what: "little metal between a bore and a round edge about the same centre",
    code: "thin-bridge",
    bad: barText(disc, "bore 92 mm"),
    good: barText(disc, "bore 90 mm"),
    at: "bore 92 mm",
    says: /Only 4 mm of metal is left between this bore and the edge, at \(50 mm, 0 mm\)/,
    fixes: 0,
  },
  {
    what: "little metal between two holes",
    code: "thin-bridge",
    bad: barText(
      square,
      "hole (30 mm, 0 mm) diameter 10 mm\nhole (44 mm @ 0 deg) diameter 10 mm\nbore 43 mm",
    ),
    good: barText(
      square,
      "hole (30 mm, 0 mm) diameter 10 mm\nhole (-40 mm, 0 mm) diameter 10 mm\nbore 40 mm",
    ),
    at: "bore 43 mm",
    says: /3\.5 mm of metal is left between this bore and a hole/,
    fixes: 0,
    also: ["thin-bridge", "thin-bridge"],
  },
  {
    what: "little metal between the holes of a ring",
    code: "thin-bridge",
    bad: barText(square, `${RING} 26 mm`),
    good: barText(square, `${RING} 24 mm`),
    at: "hole ring 6 at radius 30 mm diameter 26 mm",
    says: /4 mm of metal is left between this hole and the next hole of its ring/,
    fixes: 0,
  },
];

describe.each([
  ["building", BUILD],
  ["layout", LAYOUT],
])("%s", (_, cases) => {
  describe.each(cases)("$code: $what", ({ code, bad, good, at, says, fixes, also = [] }) => {
    const studied = study(bad);
    const found = studied.problems.filter(
      (problem) => problem.code === code && rangeText(studied, problem) === at,
    );
    const [problem] = found;

    it("is found once, at its place, and nothing else is", () => {
      expect(codesOf(studied).sort()).toEqual([code, ...also].sort());
      expect(found).toHaveLength(1);
      expect(problem?.message).toMatch(says);
    });

    it("is not found in a text beside it", () => {
      const { problems } = study(good);
      expect(problems.filter((other) => other.severity === "error" || other.code === code)).toEqual([]);
    });

    it("is cleared by each fix", () => {
      expect(problem?.fixes).toHaveLength(fixes);
      for (const text of problem ? fixedTexts(studied, problem) : []) {
        expect(study(text).problems, text).toEqual([]);
      }
    });
  });
});
