/** Each problem of names and values: what is blamed, what is said, and that each fix offered mends it. */
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import type { ProblemCode } from "../../geometry/language/problem-codes.ts";
import { readRanges } from "../support/marks.ts";
import { completed, problemsOf } from "./marked-text.ts";

interface Case {
  /** A fragment with marks: each marked range has one problem of the code, and nothing else is wrong. */
  readonly bad: string;
  /** A piece of every message. */
  readonly says: string;
  /** The fragment after the first fix of each problem; absent where there is no fix. */
  readonly mended?: string;
  readonly variant?: string;
  readonly severity?: "warning";
  /** The fragment is the whole file. */
  readonly whole?: true;
}

const CASES: Partial<Record<ProblemCode, readonly Case[]>> = {
  "missing-unit": [
    { bad: "thickness ⟦12⟧", says: "length such as 12 mm, but '12' has no unit", mended: "thickness 12 mm" },
    { bad: "thickness ⟦(4 + 5)⟧", says: "'(4 + 5)' has no unit", mended: "thickness (4 + 5) mm" },
    { bad: "thickness ⟦4 * 3⟧", says: "'4 * 3' has no unit", mended: "thickness (4 * 3) mm" },
    { bad: "target edge offset ⟦-6⟧", says: "'-6' has no unit", mended: "target edge offset -6 mm" },
    {
      bad: "target edge offset ⟦0⟧",
      says: "zero needs its unit too: write 0 mm",
      mended: "target edge offset 0 mm",
    },
    {
      bad: "hole (30 mm, ⟦0⟧) diameter 15 mm",
      says: "zero needs its unit",
      mended: "hole (30 mm, 0 mm) diameter 15 mm",
    },
    {
      bad: "target edge offset 3 mm - ⟦6⟧",
      says: "Both sides of '-'",
      mended: "target edge offset 3 mm - 6 mm",
    },
    {
      bad: "target edge offset ⟦6⟧ - 3 mm",
      says: "Both sides of '-'",
      mended: "target edge offset 6 mm - 3 mm",
    },
    {
      bad: "target edge offset 1 mm + ⟦2⟧ + 3 mm",
      says: "'2' has no unit",
      mended: "target edge offset 1 mm + 2 mm + 3 mm",
    },
    {
      bad: "target edge offset 2 * (3 mm + ⟦4⟧)",
      says: "'4' has no unit",
      mended: "target edge offset 2 * (3 mm + 4 mm)",
    },
    {
      bad: "hole (1 in, 2 in) diameter 1 in\nhole (-1 in, 2 in) diameter ⟦1⟧\nslot (1 in, 1 in) to (2 in, 1 in) width 1 in",
      says: "has no unit",
      mended:
        "hole (1 in, 2 in) diameter 1 in\nhole (-1 in, 2 in) diameter 1 in\nslot (1 in, 1 in) to (2 in, 1 in) width 1 in",
    },
    { bad: "spin ⟦4200⟧ ccw", says: "speed of rotation such as 4200 rpm", mended: "spin 4200 rpm ccw" },
    { bad: "approach ⟦0⟧ to 6 m/s", says: "a speed such as 3 m/s", mended: "approach 0 m/s to 6 m/s" },
    { bad: "density ⟦7850⟧", says: "a density such as 7850 kg/m^3", mended: "density 7850 kg/m^3" },
    { bad: "yield ⟦900⟧", says: "a stress such as 1200 MPa", mended: "yield 900 MPa" },
    {
      bad: "hole (40 mm @ ⟦90⟧) diameter 15 mm",
      says: "an angle such as 45 deg",
      mended: "hole (40 mm @ 90 deg) diameter 15 mm",
    },
    { bad: "require mass <= ⟦1.6⟧", says: "a mass such as 1.6 kg", mended: "require mass <= 1.6 kg" },
    { bad: "require balance <= ⟦40⟧", says: "balance grade such as G40", mended: "require balance <= G40" },
    { bad: "require bite at ⟦3⟧ >= 5 mm", says: "a speed", mended: "require bite at 3 m/s >= 5 mm" },
    {
      bad: "let tail = ⟦96⟧ from 80 mm to 120 mm\ntarget edge offset tail",
      says: "'tail' is a length",
      mended: "let tail = 96 mm from 80 mm to 120 mm\ntarget edge offset tail",
    },
    {
      bad: "let tail = 96 mm from ⟦80⟧ to 120 mm\ntarget edge offset tail",
      says: "The lower bound of 'tail'",
      mended: "let tail = 96 mm from 80 mm to 120 mm\ntarget edge offset tail",
    },
    {
      bad: 'let tail = 9 mm\ntarget edge offset tail\nvariant "long" { tail = ⟦110⟧ }',
      says: "'tail' is a length",
      mended: 'let tail = 9 mm\ntarget edge offset tail\nvariant "long" { tail = 110 mm }',
      variant: "long",
    },
    {
      bad: "target edge offset min(3 mm, ⟦4⟧)",
      says: "'min' takes",
      mended: "target edge offset min(3 mm, 4 mm)",
    },
  ],
  "wrong-unit": [
    {
      bad: "let a = sin(⟦30⟧)\nhole (a * 9 mm, 30 mm) diameter 15 mm",
      says: "'sin' takes an angle such as 45 deg, but '30' is a plain number",
      mended: "let a = sin(30 deg)\nhole (a * 9 mm, 30 mm) diameter 15 mm",
    },
    {
      bad: "hole (40 mm * cos(⟦0⟧), 0 mm) diameter 15 mm",
      says: "'cos' takes an angle",
      mended: "hole (40 mm * cos(0 deg), 0 mm) diameter 15 mm",
    },
    {
      bad: "thickness ⟦3 kg⟧",
      says: "is a length such as 12 mm, but '3 kg' is a mass",
      mended: "thickness 3 mm",
    },
    { bad: "thickness ⟦1/4 in⟧", says: "It reads as 1 ÷ (4 in)", mended: "thickness (1/4) in" },
    {
      bad: "target edge offset ⟦-1/4 in⟧",
      says: "It reads as -1 ÷ (4 in)",
      mended: "target edge offset (-1/4) in",
    },
    {
      bad: "target edge offset 3 in + ⟦1/4 in⟧",
      says: "It reads as",
      mended: "target edge offset 3 in + (1/4) in",
    },
    {
      bad: "target edge offset ⟦1/4 in⟧ + 3 in",
      says: "It reads as",
      mended: "target edge offset (1/4) in + 3 in",
    },
    {
      bad: "let n = 6\nthickness ⟦n⟧",
      says: "'n' is a plain number (6)",
      mended: "let n = 6\nthickness (n) mm",
    },
    {
      bad: "let n = 6\nthickness 3 mm + ⟦n * 2⟧",
      says: "'n * 2' is a plain number (12)",
      mended: "let n = 6\nthickness 3 mm + (n * 2) mm",
    },
    {
      bad: "let a = 8 mm\nthickness ⟦a / 2 mm⟧",
      says: "is a plain number (4)",
      mended: "let a = 8 mm\nthickness a / 2",
    },
    {
      bad: "let a = 8 mm\nthickness ⟦a * 2 mm⟧",
      says: "is an area (16 mm^2)",
      mended: "let a = 8 mm\nthickness a * 2",
    },
    {
      bad: "let a = 8 mm\ntarget edge offset ⟦(2 mm * a)⟧",
      says: "is an area",
      mended: "let a = 8 mm\ntarget edge offset (2 * a)",
    },
    {
      bad: "target edge offset 3 mm + ⟦2 kg⟧",
      says: "Both sides of '+'",
      mended: "target edge offset 3 mm + 2 mm",
    },
    {
      bad: "target edge offset ⟦2 kg⟧ + 3 mm",
      says: "Both sides of '+'",
      mended: "target edge offset 2 mm + 3 mm",
    },
    {
      bad: "outline repeat ⟦3 mm⟧ { from (60 mm, 0 mm) line (0 mm, 60 mm) }",
      says: "a plain number such as 4",
      mended: "outline repeat 3 { from (60 mm, 0 mm) line (0 mm, 60 mm) }",
    },
    {
      bad: "let r = 170 mm\nspin ⟦(50 m/s) / r⟧ ccw",
      says: "multiply it by 1 rad",
      mended: "let r = 170 mm\nspin ((50 m/s) / r) * 1 rad ccw",
    },
    {
      bad: "let w = (50 m/s) / (170 mm)\nspin ⟦w⟧ ccw",
      says: "is a rate per second",
      mended: "let w = (50 m/s) / (170 mm)\nspin w * 1 rad ccw",
    },
    {
      bad: "let a = 5 mm\nthickness a ^ ⟦2 mm⟧ / a",
      says: "An exponent is a plain number",
      mended: "let a = 5 mm\nthickness a ^ 2 / a",
    },
    {
      bad: "thickness (12 mm) ⟦mm⟧",
      says: "a length already (12 mm); 'mm' would be a second unit",
      mended: "thickness (12 mm)",
    },
    { bad: "let a = 5 mm\nhole (a @ atan(⟦a⟧)) diameter 15 mm", says: "'atan' takes a plain number" },
    {
      bad: "let a = 12.4 mm\nthickness round(⟦a⟧)",
      says: "say to which step, such as 'round(…, 1 mm)'",
      mended: "let a = 12.4 mm\nthickness round(a, 1 mm)",
    },
    {
      bad: "let a = 4 mm\nlet b = 30 mm\nhole (40 mm @ ⟦a / b⟧) diameter 15 mm",
      says: "is a plain number (0.133333)",
      mended: "let a = 4 mm\nlet b = 30 mm\nhole (40 mm @ (a / b) deg) diameter 15 mm",
    },
    { bad: "require mass <= ⟦G40⟧", says: "no limit for 'mass'; write a value such as '1.6 kg'" },
    { bad: "require mass <= ⟦3 mm⟧", says: "The limit of 'mass'", mended: "require mass <= 3 kg" },
    {
      bad: 'let a = 9 mm\ntarget edge offset a\nvariant "v" { a = ⟦5 deg⟧ }',
      says: "'a' is a length",
      mended: 'let a = 9 mm\ntarget edge offset a\nvariant "v" { a = 5 mm }',
      variant: "v",
    },
    {
      bad: "let a = 90 deg\ntarget edge offset max(3 mm, ⟦a⟧)",
      says: "'max' takes values of one kind, here a length",
    },
  ],
  "undefined-name": [
    {
      bad: "let reach = 30 mm\ntarget edge offset reach + ⟦reech⟧",
      says: "No let defines 'reech'; did you mean reach?",
      mended: "let reach = 30 mm\ntarget edge offset reach + reach",
    },
    { bad: "target edge offset ⟦quux⟧", says: "No let defines 'quux'." },
    {
      bad: 'let tail = 9 mm\ntarget edge offset tail\nvariant "v" { ⟦tial⟧ = 5 mm }',
      says: "nothing to override; did you mean tail?",
      mended: 'let tail = 9 mm\ntarget edge offset tail\nvariant "v" { tail = 5 mm }',
    },
  ],
  "unused-name": [
    { bad: "let ⟦waist⟧ = 24 mm", says: "'waist' is not used", mended: "", severity: "warning" },
    {
      bad: "let ⟦waist⟧ = 24 mm # of the hull\nspin 9 rpm cw",
      says: "not used",
      mended: "spin 9 rpm cw",
      severity: "warning",
    },
    { bad: "let ⟦a⟧ = 24 mm\nlet ⟦b⟧ = a * 2", says: "not used", mended: "", severity: "warning" },
    {
      bad: "let ⟦a⟧ = (24 mm +\n  3 mm)\nspin 9 rpm cw",
      says: "not used",
      mended: "spin 9 rpm cw",
      severity: "warning",
    },
  ],
  cycle: [
    { bad: "let ⟦a⟧ = a + 1 mm\ntarget edge offset a", says: "'a' is defined by itself" },
    {
      bad: "let ⟦a⟧ = b\nlet b = c / 2\nlet c = a * 3\ntarget edge offset a",
      says: "'a', 'b' and 'c' depend on each other in a circle",
    },
    {
      bad: "let d = a\nlet ⟦a⟧ = b + c\nlet b = a\nlet c = b\ntarget edge offset d",
      says: "'a', 'b' and 'c'",
    },
    {
      bad: 'let a = 3 mm\nlet b = a\ntarget edge offset b\nvariant "v" { ⟦a⟧ = b }',
      says: "'b' and 'a' depend",
      variant: "v",
    },
  ],
  "bad-argument": [
    { bad: "thickness ⟦hypot(3 mm)⟧", says: "'hypot' is written 'hypot(x, y)'; 1 value stands here" },
    { bad: "thickness ⟦min()⟧", says: "no values stand here" },
    { bad: "thickness 3 mm * ⟦sqrt(4, 5)⟧", says: "'sqrt(value)'; 2 values stand here" },
    { bad: "thickness sqrt(⟦-4 mm^2⟧)", says: "a negative value has no square root; this is -4 mm^2" },
    { bad: "hole (40 mm @ asin(⟦1.5⟧)) diameter 15 mm", says: "a number from -1 to 1; this is 1.5" },
    { bad: "hole (40 mm @ ⟦atan2(0 mm, 0 mm)⟧) diameter 15 mm", says: "no direction" },
    { bad: "thickness round(12.4 mm, ⟦0 mm⟧)", says: "the step has to be more than zero" },
  ],
  "not-movable": [
    {
      bad: "let tail = 9 mm\nlet far = tail + 3 mm\nbalance by tail, ⟦far⟧",
      says: "'far' is 'tail + 3 mm', which is no single value that could be moved",
    },
    {
      bad: "let tail = 9 mm\nlet far = tail + 3 mm from 8 mm to 12 mm\naim least mass by ⟦far⟧",
      says: "such as let tail = 96 mm, or write 'far' as one",
    },
    { bad: "let far = (1/4) in\nbalance by ⟦far⟧", says: "'far' is '(1/4) in'" },
  ],
  "no-bounds": [
    {
      bad: "let tail = 9 mm\naim least mass by ⟦tail⟧",
      says: "say in its let how far it may go",
      mended: "let tail = 9 mm from 4.5 mm to 18 mm\naim least mass by tail",
    },
    {
      bad: "let turn_by = -30 deg # out of true\naim least mass by ⟦turn_by⟧",
      says: "'turn_by' has no bounds",
      mended: "let turn_by = -30 deg from -60 deg to -15 deg # out of true\naim least mass by turn_by",
    },
    {
      bad: "let shift = 0 mm\naim least mass by ⟦shift⟧",
      says: "as in let tail = 96 mm from 80 mm to 120 mm",
    },
  ],
  "not-finite": [
    { bad: "let n = 4\nthickness 12 mm / ⟦(n - 4)⟧", says: "Division by zero: '(n - 4)' is 0" },
    { bad: "thickness ⟦1e200 mm * 1e200⟧", says: "is too large to compute with" },
    { bad: "thickness 1 mm + ⟦1e306 m⟧", says: "too large" },
    { bad: "thickness 1 mm * ⟦(-8) ^ 0.5⟧", says: "has no value" },
    { bad: "thickness 1 mm * ⟦0 ^ -1⟧", says: "too large" },
    { bad: "thickness 1 mm * tan(⟦90 deg⟧)", says: "a quarter turn has no tangent" },
  ],
  "out-of-range": [
    {
      bad: "let tail = 9 mm from 8 mm to 12 mm\naim least mass and least balance and ⟦most bite at 3 m/s⟧ by tail",
      says: "one goal or two",
      mended: "let tail = 9 mm from 8 mm to 12 mm\naim least mass and least balance by tail",
    },
    { bad: "thickness ⟦0 mm⟧", says: "The thickness has to be more than 0 mm; this is 0 mm" },
    { bad: "thickness ⟦-3 in⟧", says: "this is -3 in", mended: "thickness 3 in" },
    { bad: "thickness ⟦200 m⟧", says: "at most 100000 mm" },
    { bad: "bore ⟦-22 mm⟧", says: "The bore", mended: "bore 22 mm" },
    { bad: "hole (30 mm, 0 mm) diameter ⟦0 mm⟧", says: "The diameter" },
    {
      bad: "slot (30 mm, 0 mm) to (40 mm, 0 mm) width ⟦-8 mm⟧",
      says: "The width",
      mended: "slot (30 mm, 0 mm) to (40 mm, 0 mm) width 8 mm",
    },
    {
      bad: "hole ring ⟦2.5⟧ at radius 40 mm diameter 15 mm",
      says: "a whole number from 1 to 360; this is 2.5",
      mended: "hole ring 3 at radius 40 mm diameter 15 mm",
    },
    { bad: "hole ring 4 at radius ⟦0 mm⟧ diameter 15 mm", says: "The radius of the ring" },
    {
      bad: "outline repeat ⟦1⟧ { from (60 mm, 0 mm) line (0 mm, 60 mm) }",
      says: "from 2 to 360",
      mended: "outline repeat 2 { from (60 mm, 0 mm) line (0 mm, 60 mm) }",
    },
    {
      bad: "outline repeat ⟦1000⟧ { from (60 mm, 0 mm) line (0 mm, 60 mm) }",
      says: "from 2 to 360",
      mended: "outline repeat 360 { from (60 mm, 0 mm) line (0 mm, 60 mm) }",
    },
    { bad: "outline { from (60 mm, ⟦1 km⟧) line (0 mm, 60 mm) close }", says: "at most" },
    {
      bad: "outline { from (60 mm, 0 mm) arc (0 mm, 60 mm) radius ⟦-60 mm⟧ turning left close }",
      says: "The radius",
      mended: "outline { from (60 mm, 0 mm) arc (0 mm, 60 mm) radius 60 mm turning left close }",
    },
    {
      bad: "outline { from (60 mm, 0 mm) line (0 mm, 60 mm) round ⟦0 mm⟧ line (-60 mm, 0 mm) close }",
      says: "The radius of the corner",
    },
    {
      bad: "outline { from (60 mm, 0 mm) line (0 mm, 60 mm) bevel ⟦-2 mm⟧ line (-60 mm, 0 mm) close }",
      says: "The size of the bevel",
      mended: "outline { from (60 mm, 0 mm) line (0 mm, 60 mm) bevel 2 mm line (-60 mm, 0 mm) close }",
    },
    { bad: "spin ⟦0 rpm⟧ ccw", says: "at least 1 rpm" },
    { bad: "spin ⟦-4200 rpm⟧ ccw", says: "at least 1 rpm", mended: "spin 4200 rpm ccw" },
    { bad: "spin ⟦1e9 rpm⟧ ccw", says: "at most 1000000 rpm" },
    { bad: "approach ⟦-1 m/s⟧ to 6 m/s", says: "at least 0 m/s", mended: "approach 1 m/s to 6 m/s" },
    {
      bad: "approach ⟦6 m/s to 0.5 m/s⟧",
      says: "these run from 6 m/s to 0.5 m/s",
      mended: "approach 0.5 m/s to 6 m/s",
    },
    { bad: "approach ⟦6 m/s to 6 m/s⟧", says: "from low to high" },
    { bad: "target round ⟦-5 mm⟧", says: "at least 0 mm", mended: "target round 5 mm" },
    { bad: "density ⟦0 kg/m^3⟧", says: "The density" },
    { bad: "density ⟦7850 kg/in^3⟧", says: "at most" },
    { bad: "yield ⟦-9 MPa⟧", says: "The yield strength", mended: "yield 9 MPa" },
    {
      bad: "let a = 9 mm from ⟦12 mm to 3 mm⟧\ntarget edge offset a",
      says: "The bounds of 'a' run from low to high",
      mended: "let a = 9 mm from 3 mm to 12 mm\ntarget edge offset a",
    },
    { bad: 'variant "thin" { thickness ⟦0 mm⟧ }', says: "The thickness", variant: "thin" },
  ],
  "outside-bounds": [
    {
      bad: "let a = ⟦9 mm⟧ from 10 mm to 12 mm\ntarget edge offset a",
      says: "'a' is 9 mm, outside its bounds of 10 mm to 12 mm",
      mended: "let a = 10 mm from 10 mm to 12 mm\ntarget edge offset a",
      severity: "warning",
    },
    {
      bad: "let a = ⟦1 in⟧ from 10 mm to 12 mm\ntarget edge offset a",
      says: "'a' is 1 in",
      mended: "let a = 12 mm from 10 mm to 12 mm\ntarget edge offset a",
      severity: "warning",
    },
    {
      bad: 'let a = 11 mm from 10 mm to 12 mm\ntarget edge offset a\nvariant "v" { a = ⟦13 mm⟧ }',
      says: "'a' is 13 mm",
      mended: 'let a = 11 mm from 10 mm to 12 mm\ntarget edge offset a\nvariant "v" { a = 12 mm }',
      severity: "warning",
      variant: "v",
    },
  ],
  "unknown-material": [
    {
      bad: "material ⟦wear_steel_45⟧",
      says: "did you mean wear_steel_450?",
      mended: "material wear_steel_450",
    },
    { bad: "material ⟦granite⟧", says: "The table has wear_steel_400" },
    {
      bad: 'variant "v" { material ⟦plaa⟧ }',
      says: "did you mean pla?",
      mended: 'variant "v" { material pla }',
      variant: "v",
    },
  ],
  "unknown-figure": [
    { bad: "require ⟦mas⟧ <= 3 kg", says: "did you mean mass?", mended: "require mass <= 3 kg" },
    { bad: "require ⟦beauty⟧ >= 3", says: "The figures are mass, balance, bite" },
    {
      bad: "let tail = 9 mm from 8 mm to 12 mm\naim least ⟦mas⟧ by tail",
      says: "'mas' is not a figure that can be aimed at; did you mean mass?",
      mended: "let tail = 9 mm from 8 mm to 12 mm\naim least mass by tail",
    },
    {
      bad: "let tail = 9 mm from 8 mm to 12 mm\naim least mass keeping ⟦balanse⟧ <= G16 by tail",
      says: "did you mean balance?",
      mended: "let tail = 9 mm from 8 mm to 12 mm\naim least mass keeping balance <= G16 by tail",
    },
  ],
  "missing-part": [
    { bad: "require ⟦bite⟧ >= 5 mm", says: "write bite at 3 m/s", mended: "require bite at 3 m/s >= 5 mm" },
  ],
  "unexpected-text": [
    {
      bad: "require mass at ⟦3 m/s⟧ <= 5 kg",
      says: "does not depend on a closing speed",
      mended: "require mass <= 5 kg",
    },
  ],
  "misplaced-statement": [
    { bad: "outline { from ⟦by (60 mm, 0 mm)⟧ line (0 mm, 60 mm) close }", says: "there is none before" },
    { bad: "hole ⟦by (60 mm, 0 mm)⟧ diameter 15 mm", says: "there is none before" },
  ],
  "duplicate-name": [
    {
      bad: "let tail = 9 mm from 8 mm to 12 mm\naim least mass and ⟦most mass⟧ by tail",
      says: "'mass' is a goal already",
      mended: "let tail = 9 mm from 8 mm to 12 mm\naim least mass by tail",
    },
    {
      bad: "let tail = 9 mm from 8 mm to 12 mm\naim least mass by tail, ⟦tail⟧",
      says: "'tail' stands here already",
      mended: "let tail = 9 mm from 8 mm to 12 mm\naim least mass by tail",
    },
    {
      bad: 'variant "a" { thickness 9 mm }\nvariant ⟦"a"⟧ { thickness 8 mm }',
      says: 'a variant "a" already; the first one counts',
      mended: 'variant "a" { thickness 9 mm }',
    },
    {
      bad: "let a = 3 mm\nlet ⟦a⟧ = 4 mm # again\ntarget edge offset a",
      says: "a let 'a' already",
      mended: "let a = 3 mm\ntarget edge offset a",
    },
    {
      bad: 'let a = 3 mm\ntarget edge offset a\nvariant "v" {\n  a = 4 mm\n  ⟦a⟧ = 5 mm\n}',
      says: "overrides 'a' already",
      mended: 'let a = 3 mm\ntarget edge offset a\nvariant "v" {\n  a = 4 mm\n}',
      variant: "v",
    },
  ],
  "duplicate-statement": [
    { bad: "thickness 9 mm\n⟦thickness⟧ 8 mm", says: "a line 'thickness' already", mended: "thickness 9 mm" },
    { bad: "bore 20 mm\n⟦bore⟧ 21 mm # wider", says: "the first one counts", mended: "bore 20 mm" },
    { bad: 'bar "a"\n⟦bar⟧ "b"', says: "a line 'bar'", mended: 'bar "a"' },
    {
      bad: "outline { from (60 mm, 0 mm) line (0 mm, 60 mm) close }\n⟦outline⟧ {\n  from (60 mm, 0 mm)\n  close\n}",
      says: "a line 'outline'",
      mended: "outline { from (60 mm, 0 mm) line (0 mm, 60 mm) close }",
    },
    {
      bad: 'variant "v" {\n  thickness 9 mm\n  ⟦thickness⟧ 8 mm\n}',
      says: "a line 'thickness'",
      mended: 'variant "v" {\n  thickness 9 mm\n}',
      variant: "v",
    },
  ],
  "missing-outline": [
    { bad: '⟦bar "x"⟧\nthickness 9 mm\nmaterial pla', says: "write outline {", whole: true },
  ],
  "missing-thickness": [
    {
      bad: '⟦bar "x"⟧\nmaterial pla\noutline { from (60 mm, 0 mm) line (0 mm, 60 mm) close }\nbore 9 mm',
      says: "a line such as thickness 12 mm",
      whole: true,
    },
    {
      bad: "⟦⟧material pla\noutline { from (60 mm, 0 mm) line (0 mm, 60 mm) close }\nbore 9 mm",
      says: "no thickness",
      whole: true,
    },
  ],
  "missing-material": [
    {
      bad: '⟦bar "x"⟧\nthickness 9 mm\noutline { from (60 mm, 0 mm) line (0 mm, 60 mm) close }\nbore 9 mm',
      says: "the mass is unknown",
      severity: "warning",
      whole: true,
    },
  ],
  "bore-missing": [
    {
      bad: "thickness 9 mm\nmaterial pla\n⟦outline⟧ {\n  from (60 mm, 0 mm)\n  line (0 mm, 60 mm)\n  close\n} # end\nspin 9 rpm cw",
      says: "a line such as bore 20 mm",
      severity: "warning",
      whole: true,
      mended:
        "thickness 9 mm\nmaterial pla\noutline {\n  from (60 mm, 0 mm)\n  line (0 mm, 60 mm)\n  close\n} # end\nbore 20 mm\nspin 9 rpm cw",
    },
    {
      bad: "thickness 9 mm\r\nmaterial pla\r\n⟦outline⟧ { from (60 mm, 0 mm) line (0 mm, 60 mm) close }",
      says: "no bore",
      severity: "warning",
      whole: true,
      mended:
        "thickness 9 mm\r\nmaterial pla\r\noutline { from (60 mm, 0 mm) line (0 mm, 60 mm) close }\r\nbore 20 mm",
    },
  ],
};

describe.each(Object.entries(CASES))("%s", (code, cases) => {
  it.each(cases)("$bad", ({ bad, says, mended, variant, severity, whole }) => {
    const { text, ranges } = readRanges(whole ? bad : completed(bad));
    const problems = problemsOf(text, variant ?? null);
    expect(problems.map((problem) => ({ code: problem.code, range: problem.range }))).toEqual(
      ranges.map((range) => ({ code, range })),
    );
    for (const problem of problems) {
      expect(problem.severity).toBe(severity ?? "error");
      expect(problem.message).toContain(says);
      expect(problem.message).toMatch(/[.?]$/);
      expect(problem.fixes.length > 0, "offers a fix").toBe(mended !== undefined);
      for (const fix of problem.fixes) {
        const left = problemsOf(applyEdits(text, fix.edits), variant ?? null);
        expect(
          left.filter((other) => other.message === problem.message),
          fix.title,
        ).toEqual([]);
        expect(left.length, fix.title).toBeLessThan(problems.length);
      }
    }
    const [first] = problems;
    if (mended !== undefined && first?.fixes[0] !== undefined) {
      const result = applyEdits(text, first.fixes[0].edits);
      expect(result.trimEnd()).toBe((whole ? mended : completed(mended)).trimEnd());
      expect(problemsOf(result, variant ?? null)).toEqual([]);
    }
  });
});

describe("nothing is wrong with", () => {
  it.each([
    "thickness 12 mm",
    "thickness (1/4) in",
    "let half = 12 mm / 2\nthickness half + half",
    "let b = a * 2\nlet a = 6 mm\nthickness b",
    "let a = 12 mm from 10 mm to 12 mm\nthickness a",
    "let a = 0.1 mm + 0.2 mm from 0.1 mm to 0.3 mm\nthickness a",
    "thickness sqrt(9 mm * 16 mm)",
    "thickness (9 mm)^0.5 * (16 mm)^(1/2)",
    "thickness round(12.4 mm, 1 mm) + floor(0.3 mm, 0.1 mm) + ceil(2.2) * 1 mm",
    "thickness abs(-12 mm) + min(3 mm, 2 mm, 1 mm) + hypot(3 mm, 4 mm)",
    "hole (40 mm @ atan2(3 mm, 4 mm)) diameter 15 mm",
    "hole (40 mm @ asin(0.5) + acos(0.5) + atan(1)) diameter 15 mm",
    "hole (40 mm @ 1/8 * 1 turn) diameter 15 mm",
    "hole (40 mm @ 45 deg * 20 mm / 10 mm) diameter 15 mm",
    "hole ring 360/90 at radius 40 mm diameter 15 mm from 45 deg",
    "let w = 4200 rpm\nlet tip = w * 130 mm\napproach 0 m/s to tip / 10",
    "let I = 0.02 kg*m^2\nlet w = sqrt(2 * (1/2 * I * (4200 rpm)^2) / I) * 1 rad\nspin w cw",
    "spin 70 turn/s cw",
    "spin 440 rad/s ccw",
    "target round 0 mm offset -3 mm",
    "density 7850 kg/m^3\nyield 900 MPa",
    "require balance <= G6.3\nrequire balance <= 40 mm/s\nrequire bite at 3 m/s >= 5 mm",
    'let a = 5 mm\nvariant "v" { a = 6 mm }',
    'let a = 5 mm\nvariant "v" { thickness a }',
    "thickness 12 mm * cos(60 deg) * 2",
    "let a = 5 mm from 4 mm to 6 mm\naim most bite at 2 m/s and most bite at 4 m/s by a",
    "let a = 5 mm from 4 mm to 6 mm\naim least mass keeping balance <= G16, bite at 3 m/s >= a by a",
    "let pi2 = 2 * pi\nthickness pi2 * 1 mm",
  ])("%s", (fragment) => {
    expect(problemsOf(completed(fragment))).toEqual([]);
    expect(problemsOf(completed(fragment), "v")).toEqual([]);
  });
});
