/**
 * Single approaches, each followed through time: the exact first contact must be the same place of the bar, as
 * deep and at the same angle. Five hundred bars, three targets, both ways round.
 */
import { describe, expect, it } from "vitest";
import { biteProfile, contactAt } from "../../geometry/bite/bite.ts";
import type { Target } from "../../geometry/language/design.ts";
import type { SpinDirection } from "../../geometry/language/tree.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { stepper } from "./oracles/first-contact.ts";
import { largestRadius } from "./oracles/stretches.ts";
import { seeded, variedBar } from "./random-bars.ts";

const PHASES = 6;
/** Time is halved to 1e-8 of the radius. */
const DEPTH_SHARE = 5e-8;
/** Across the line along which they approach each other the place is known to the root of what depth is. */
const POINT_SHARE = 1e-5;
/** The direction from there to a disc's centre: so much over the disc's radius. */
const ANGLE_RAD = 1e-4;

/** Advances from a hundredth of the bar to five of it, discs from a pinprick to a third of it. */
function targetAndAdvance(kind: Target["kind"], maxRadiusMm: number, random: () => number) {
  const advanceMm = 0.1 * 5000 ** random();
  const radiusMm = kind === "round" ? maxRadiusMm * 0.003 * 100 ** random() : 0;
  const aside = kind === "face" || random() < 0.4 ? 0 : 1.96 * (random() - 0.5);
  return { target: { kind, radiusMm, offsetMm: aside * (maxRadiusMm + radiusMm) }, advanceMm };
}

function expectSameContacts(
  outer: Loop,
  direction: SpinDirection,
  kind: Target["kind"],
  random: () => number,
): void {
  const rim = largestRadius(outer.segments);
  const { target, advanceMm } = targetAndAdvance(kind, rim, random);
  const profile = biteProfile(outer, direction, target);
  const step = stepper(outer, direction, target, advanceMm);
  for (let i = 0; i < PHASES; i++) {
    const phase = (2 * Math.PI * (i + random())) / PHASES;
    const own = contactAt(profile, advanceMm, phase);
    const { depthMm, passed, hit } = step(phase);
    const told = `${direction}, advance ${advanceMm}, phase ${phase}, ${JSON.stringify(target)}`;
    expect(Math.abs(own.depthMm - depthMm) / rim, `depth, ${told}`).toBeLessThan(DEPTH_SHARE);
    expect(own.point === null, `passed, ${told}`).toBe(passed);
    if (hit === null || own.point === null || own.strikeAngleRad === null) continue;
    const off = Math.hypot(own.point.x - hit.point.x, own.point.y - hit.point.y);
    expect(off / rim, `place, ${told}`).toBeLessThan(POINT_SHARE);
    expect(Math.abs(own.strikeAngleRad - hit.strikeAngleRad), `angle, ${told}`).toBeLessThan(ANGLE_RAD);
  }
}

describe.each(["edge", "round", "face"] as const)("the first contact with an oncoming %s", (kind) => {
  it.each([...Array(500).keys()])("is as followed on bar %i", (seed) => {
    const random = seeded(seed + 9000);
    for (const direction of ["ccw", "cw"] as const)
      expectSameContacts(variedBar(seed), direction, kind, random);
  });
});
