/**
 * The bar and its target as bodies of a general engine for rigid bodies: the bar turns, the target moves, and the
 * engine says how far apart they are. Nothing of the bite is known to it.
 *
 * Its own sweep from one pose to the next knows no turning, so the bodies are moved by as much at a time as they
 * surely stay apart, its distance over their greatest speed, until it finds them touching.
 *
 * It reckons in single precision, 6e-8 of a coordinate, and a distance between two placed shapes goes through
 * some dozen roundings: good to a millionth of the radius. Three millionths are therefore called touching.
 */
import RAPIER from "@dimforge/rapier2d-compat";
import { flatten } from "../../geometry/outline/flatten.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import type { SteppedTarget } from "../bite/oracles/first-contact.ts";
import type { Pair } from "../support/loops.ts";

/** As shares of the largest radius. The engine gets lengths in largest radii, where it reckons best. */
const TOUCHING = 3e-6;
const FLATNESS = 1e-6;
/** A wall so large for a face, in largest radii. */
const WALL = 4;
/**
 * The wall stands so far behind the face, and counts as touched from so far. Between flat sides nearer than some
 * 1e-5 the engine now and then loses the distance; so it is never asked about that.
 */
const RIND = 0.05;
/** Beyond this the engine need not look. */
const SIGHT = 1;

/** A body of the engine: convex solids, or a hollow outline. */
export interface EngineBar {
  readonly maxRadiusMm: number;
  readonly shapes: readonly RAPIER.Shape[];
}

/** Get the engine ready; before anything else here. */
export const startEngine = (): Promise<void> => RAPIER.init();

/** Convex solids, each by its corners in mm. */
export function solidBar(maxRadiusMm: number, solids: readonly (readonly Pair[])[]): EngineBar {
  const scaled = (corners: readonly Pair[]) => Float32Array.from(corners.flat().map((c) => c / maxRadiusMm));
  return { maxRadiusMm, shapes: solids.map((corners) => new RAPIER.ConvexPolygon(scaled(corners), false)) };
}

/**
 * Outlines as drawn, of fine chords. Against a point only these will do: inside a solid the engine cannot tell how
 * deep a point is.
 */
export function hollowBar(maxRadiusMm: number, ...loops: readonly Loop[]): EngineBar {
  return { maxRadiusMm, shapes: loops.map((loop) => hollow(maxRadiusMm, loop)) };
}

function hollow(maxRadiusMm: number, loop: Loop): RAPIER.Shape {
  const points = flatten(loop, FLATNESS * maxRadiusMm);
  const corners = Float32Array.from(points.flatMap(({ x, y }) => [x / maxRadiusMm, y / maxRadiusMm]));
  const ends = Uint32Array.from(points.flatMap((_, i) => [i, (i + 1) % points.length]));
  return new RAPIER.Polyline(corners, ends);
}

export interface EngineScene {
  /** How deep a target gets that enters when the bar is turned by a phase; null if it comes abreast of the axis. */
  depthMm(phaseRad: number): number | null;
  close(): void;
}

/** A bar that turns counter-clockwise, and a target on its way. */
export function engineScene(bar: EngineBar, target: SteppedTarget, advanceMm: number): EngineScene {
  const unit = bar.maxRadiusMm;
  const radius = target.kind === "round" ? target.radiusMm / unit : 0;
  const offset = target.kind === "face" ? 0 : (target.offsetMm ?? 0) / unit;
  const advance = advanceMm / unit;
  const entry = Math.sqrt((1 + radius) ** 2 - offset ** 2);
  const rind = target.kind === "face" ? RIND : 0;
  // No point of either moves faster against the other for a radian of turning.
  const fastest = 1 + advance;

  const world = new RAPIER.World({ x: 0, y: 0 });
  const turning = world.createRigidBody(RAPIER.RigidBodyDesc.kinematicPositionBased());
  const coming = world.createRigidBody(RAPIER.RigidBodyDesc.kinematicPositionBased());
  const bars = bar.shapes.map((shape) => world.createCollider(new RAPIER.ColliderDesc(shape), turning));
  const wall = RAPIER.ColliderDesc.cuboid(WALL, WALL).setTranslation(WALL + RIND, 0);
  const comer = world.createCollider(
    target.kind === "face" ? wall : RAPIER.ColliderDesc.ball(radius),
    coming,
  );

  const gapAt = (phase: number, depth: number): number => {
    // Whole turns are taken off first: single precision is finer near 0.
    turning.setNextKinematicRotation(wrapped(phase + depth / advance));
    coming.setNextKinematicTranslation({ x: entry - depth, y: offset });
    world.step();
    const gaps = bars.map((collider) => collider.contactCollider(comer, SIGHT)?.distance ?? SIGHT);
    return Math.min(...gaps) - rind;
  };

  return {
    depthMm: (phase) => {
      for (let depth = 0; depth < entry; ) {
        const gap = gapAt(phase, depth);
        if (gap <= TOUCHING) return depth * unit;
        depth += (gap / fastest) * advance;
      }
      return null;
    },
    close: () => world.free(),
  };
}

function wrapped(angleRad: number): number {
  return angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
}
