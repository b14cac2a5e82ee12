import { describe, expect, it } from "vitest";
import { drawLoop, type PathSink } from "../../geometry/outline/path-sink.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { circle, loopOf, rectangle, sector } from "../support/loops.ts";

function recorded(loop: Loop): string[] {
  const calls: string[] = [];
  const at = ({ x, y }: { x: number; y: number }): string => `${x.toFixed(1)},${y.toFixed(1)}`;
  const sink: PathSink = {
    moveTo: (point) => calls.push(`move ${at(point)}`),
    lineTo: (point) => calls.push(`line ${at(point)}`),
    arcTo: (arc) => calls.push(`arc ${at(arc.to)} about ${at(arc.centre)}`),
    close: () => calls.push("close"),
  };
  drawLoop(loop, sink);
  return calls;
}

describe("drawing a loop", () => {
  it("leaves a last line to close", () => {
    expect(recorded(rectangle(0, 0, 4, 3))).toEqual([
      "move 0.0,0.0",
      "line 4.0,0.0",
      "line 4.0,3.0",
      "line 0.0,3.0",
      "close",
    ]);
    expect(recorded(sector(10, Math.PI))).toEqual([
      "move 0.0,0.0",
      "line 0.0,-10.0",
      "arc 0.0,10.0 about 0.0,0.0",
      "close",
    ]);
  });

  it("draws a last arc", () => {
    expect(recorded(circle(5))).toEqual(["move 5.0,0.0", "arc 5.0,0.0 about 0.0,0.0", "close"]);
  });

  it("draws nothing of nothing", () => {
    expect(recorded(loopOf([]))).toEqual([]);
  });
});
