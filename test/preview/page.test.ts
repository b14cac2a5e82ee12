/** The page in a browser: what a reader does with it, and what an update must not do to them. */
import { readFileSync } from "node:fs";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { shownProfile } from "../../extension/preview/page/strikes/shown-profile.ts";
import { contactAt } from "../../geometry/bite/bite.ts";
import { bar, CURVE, drawingOfView, madeUpView } from "./made-up-view.ts";
import { createRig, type OpenOptions, type OpenPage, type Rig } from "./rig.ts";
import { sampleText, showText } from "./sample-view.ts";
import { ONE_TOOTH } from "./texts.ts";
import { THEMES } from "./themes.ts";

let rig: Rig;
let preview: OpenPage;

beforeAll(async () => {
  rig = await createRig();
}, 60_000);
afterAll(() => rig.close());
afterEach(() => {
  expect(preview.complaints).toEqual([]);
});

async function open(options: OpenOptions = {}): Promise<OpenPage> {
  preview = await rig.open(options);
  return preview;
}

/** Open and show the made-up view. */
async function openShown(options: OpenOptions = {}): Promise<OpenPage> {
  await open(options);
  await preview.show(madeUpView());
  return preview;
}

const planeTransform = () => preview.page.locator(".plane").getAttribute("transform");

async function middleOf(selector: string, index = 0): Promise<{ x: number; y: number }> {
  const box = await preview.page.locator(selector).nth(index).boundingBox();
  if (!box) throw new Error(`${selector} is not shown`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe("the size of the page", () => {
  it("stays small: at most 150 kB of script", async () => {
    await open();
    expect(Buffer.byteLength(rig.script)).toBeLessThan(150_000);
    expect(rig.script).not.toMatch(/\beval\(|new Function\(|\.innerHTML\s*=/);
  });
});

describe("the first drawing", () => {
  it("asks for the view, and shows it fitted", async () => {
    await open();
    expect(await preview.said("ready")).toHaveLength(1);
    await preview.show(madeUpView());
    const canvas = await preview.page.locator(".canvas").boundingBox();
    const plate = await preview.page.locator(".plate").boundingBox();
    expect(plate && canvas && plate.x > canvas.x && plate.x + plate.width < canvas.x + canvas.width).toBe(
      true,
    );
    // The circle of the tips has the height of the drawing, but for a margin.
    const rim = await preview.page.locator(".rim").boundingBox();
    expect((rim?.height ?? 0) / (canvas?.height ?? 1)).toBeGreaterThan(0.7);
  });

  it("draws arcs as arcs, holes through the plate, and where the centroid and the heavy side are", async () => {
    await openShown();
    const { page } = preview;
    const plate = (await page.locator(".plate").getAttribute("d")) ?? "";
    expect(plate.match(/A/g)?.length).toBeGreaterThan(8);
    expect(plate.match(/M/g)).toHaveLength(5);
    expect(await page.locator(".plate").getAttribute("fill-rule")).toBe("evenodd");
    expect(await page.locator(".centroid").isVisible()).toBe(true);
    expect(await page.locator(".heavy.over-grade").isVisible()).toBe(true);
    expect(await page.locator(".heavy title").textContent()).toBe("Heavy side, 187.5°");
    expect(await page.locator(".ghost").count()).toBe(1);
    expect(await page.locator(".problem-mark").count()).toBe(2);
  });

  it("lets the heavy-side arrow shrink with the imbalance and go with it", async () => {
    await openShown();
    const { drawing } = madeUpView();
    if (!drawing) throw new Error("no drawing");
    const lengthWith = async (imbalanceShare: number, version: number) => {
      await preview.show(madeUpView({ version, drawing: { ...drawing, imbalanceShare, balanced: true } }));
      const box = await preview.page.locator(".heavy-line").boundingBox();
      return box?.width ?? 0;
    };
    const [long, short] = [await lengthWith(1, 2), await lengthWith(0.2, 3)];
    expect(short).toBeGreaterThan(0);
    expect(long).toBeGreaterThan(1.5 * short);
    await lengthWith(1e-6, 4);
    expect(await preview.page.locator(".heavy").isVisible()).toBe(false);
    await preview.show(madeUpView({ version: 5, drawing: { ...drawing, imbalanceDeg: null } }));
    expect(await preview.page.locator(".heavy").isVisible()).toBe(false);
  });

  it("says so where there is nothing to draw", async () => {
    await open();
    await preview.show(madeUpView({ drawing: null, ghosts: [], bite: null }));
    expect(await preview.page.getByText("Nothing to draw yet").isVisible()).toBe(true);
    expect(await preview.page.getByText("No bite:").isVisible()).toBe(true);
  });
});

describe("zoom and pan", () => {
  it("stay on every update", async () => {
    await openShown();
    const fitted = await planeTransform();
    const { x, y } = await middleOf(".canvas");
    await preview.page.mouse.move(x + 40, y);
    await preview.page.mouse.wheel(0, -400);
    await preview.settle();
    const zoomed = await planeTransform();
    expect(zoomed).not.toBe(fitted);
    for (let version = 2; version < 6; version += 1) await preview.show(madeUpView({ version }));
    expect(await planeTransform()).toBe(zoomed);
  });

  it("follow drags, keys and buttons, and fit on request", async () => {
    await openShown({ reducedMotion: true });
    const { page, settle } = preview;
    const fitted = await planeTransform();
    const places = new Set([fitted]);
    const canvas = page.locator(".canvas");
    const { x, y } = await middleOf(".canvas");
    await page.mouse.move(x, y - 120);
    await page.mouse.down();
    await page.mouse.move(x + 60, y - 90);
    await page.mouse.up();
    await settle();
    places.add(await planeTransform());
    await canvas.focus();
    for (const key of ["+", "-", "ArrowLeft", "ArrowUp"]) {
      await page.keyboard.press(key);
      await settle();
      places.add(await planeTransform());
    }
    await page.getByRole("button", { name: "Zoom in" }).click();
    await settle();
    places.add(await planeTransform());
    expect(places.size).toBeGreaterThanOrEqual(6);
    await canvas.focus();
    await page.keyboard.press("0");
    await settle();
    expect(await planeTransform()).toBe(fitted);
  });

  it("follow two fingers", async () => {
    await openShown();
    const before = await planeTransform();
    const { x, y } = await middleOf(".canvas");
    const session = await preview.page.context().newCDPSession(preview.page);
    const touch = (type: "touchStart" | "touchMove" | "touchEnd", gap: number) =>
      session.send("Input.dispatchTouchEvent", {
        type,
        touchPoints:
          type === "touchEnd"
            ? []
            : [
                { x: x - gap, y: y - 150, id: 0 },
                { x: x + gap, y: y - 150, id: 1 },
              ],
      });
    await touch("touchStart", 40);
    for (const gap of [50, 60, 70, 80]) await touch("touchMove", gap);
    await touch("touchEnd", 0);
    await preview.settle();
    const scaleOf = (transform: string | null) => Number(/scale\(([\d.]+)\)/.exec(transform ?? "")?.[1]);
    expect(scaleOf(await planeTransform()) / scaleOf(before)).toBeCloseTo(2, 0);
  });

  it("keep a fitted drawing fitted when the panel changes its size", async () => {
    await openShown();
    await preview.page.setViewportSize({ width: 320, height: 700 });
    await preview.settle();
    const [canvas, rim] = [await middleOf(".canvas"), await middleOf(".rim")];
    expect(Math.abs(canvas.x - rim.x)).toBeLessThan(1.5);
  });
});

describe("motion", () => {
  const zoomOutAndFit = async () => {
    const { page, settle } = preview;
    for (let i = 0; i < 4; i += 1) await page.getByRole("button", { name: "Zoom out" }).click();
    await settle();
    await page.evaluate(`
      window.places = [];
      new MutationObserver(() => window.places.push(document.querySelector(".plane").getAttribute("transform")))
        .observe(document.querySelector(".plane"), { attributes: true });
    `);
    await page.getByRole("button", { name: "Fit" }).click();
    await page.waitForTimeout(400);
    return page.evaluate("window.places.length");
  };

  it("is a short glide", async () => {
    await openShown();
    // A busy machine may be given a single frame in the time of a glide.
    await expect.poll(zoomOutAndFit, { timeout: 20_000 }).toBeGreaterThan(1);
  });

  it("is none where the reader asked for less", async () => {
    await openShown({ reducedMotion: true });
    expect(await zoomOutAndFit()).toBe(1);
    expect(await preview.styleOf(".edge-line", "transitionDuration")).toBe("0s");
  });
});

describe("an update", () => {
  it("takes no focus, neither on the page nor from it", async () => {
    await openShown();
    const active = () => preview.page.evaluate("document.activeElement?.outerHTML.slice(0, 60)");
    const nowhere = await active();
    expect(nowhere).toContain("<body");
    await preview.show(madeUpView({ version: 2 }));
    expect(await active()).toBe(nowhere);
    for (const selector of [".problem", ".edge", ".handle", "select", ".chart", ".canvas"]) {
      await preview.page.locator(selector).first().focus();
      const held = await active();
      await preview.show(madeUpView({ version: 3 }));
      await preview.send({ type: "highlight", source: { start: 200, end: 230 } });
      expect(String(await active()).slice(0, 8), selector).toBe(String(held).slice(0, 8));
    }
  });

  it("older than what is shown is dropped, and broken messages are not heard", async () => {
    await openShown();
    await preview.show(madeUpView({ version: 9, reports: renamed("Ninth") }));
    await preview.show(madeUpView({ version: 8, reports: renamed("Eighth") }));
    await preview.send({ type: "view", view: { ...madeUpView({ version: 10 }), drawing: 7 }, units: "mm" });
    await preview.send({ type: "close" });
    expect(await preview.page.locator("h1").textContent()).toBe("Ninth");
  });

  it("shows a drawing that is sent ahead at once, its figures and bite with the view that follows", async () => {
    await openShown();
    const shown = async () => ({
      plate: await preview.page.locator(".plate").getAttribute("d"),
      name: await preview.page.locator("h1").textContent(),
      chart: await preview.page.locator(".chart").isVisible(),
    });
    const before = await shown();
    const { documentUri, variant } = madeUpView();
    const { whole, ahead: drawing } = drawingOfView(madeUpView());
    const moved = { ...whole, loops: bar(104) };
    const ahead = {
      type: "drawing",
      documentUri,
      variant,
      drawing: { ...drawing, loops: bar(104) },
    } as const;

    await preview.send({ ...ahead, version: 1 });
    await preview.send({ ...ahead, version: 2, variant: "long tail" });
    await preview.send({ ...ahead, version: 2, documentUri: "file:///other.bar" });
    expect(await shown(), "for another text, another variant, another document").toEqual(before);

    await preview.send({ ...ahead, version: 2 });
    const early = await shown();
    expect(early.plate).not.toBe(before.plate);
    expect({ ...early, plate: "" }).toEqual({ ...before, plate: "" });

    await preview.show(madeUpView({ version: 2, drawing: moved, bite: null, reports: renamed("Longer") }));
    const late = await shown();
    expect(late.plate).toBe(early.plate);
    expect(late.name).toBe("Longer");
    expect([before.chart, late.chart]).toEqual([true, false]);
  });

  it("comes once a frame, however many there are", async () => {
    await openShown();
    await preview.page.evaluate(`
      window.renamings = 0;
      new MutationObserver(() => window.renamings++).observe(document.querySelector("h1"), { childList: true, characterData: true, subtree: true });
    `);
    const views = Array.from({ length: 30 }, (_, i) => ({
      type: "view",
      units: "mm",
      view: madeUpView({ version: 100 + i, reports: renamed(`Bar ${i}`) }),
    }));
    await preview.page.evaluate(`for (const view of ${JSON.stringify(views)}) window.postMessage(view, "*")`);
    await expect.poll(() => preview.page.locator("h1").textContent()).toBe("Bar 29");
    expect(Number(await preview.page.evaluate("window.renamings"))).toBeLessThan(15);
  });

  it("keeps what is folded open, and the switches", async () => {
    await openShown();
    await preview.page.locator("summary", { hasText: "Spin" }).click();
    await preview.page.getByLabel("Explain the figures").check();
    await preview.show(madeUpView({ version: 2 }));
    expect(await preview.page.getByText("Kinetic energy of the bar alone").isVisible()).toBe(true);
  });
});

function renamed(title: string) {
  const { reports } = madeUpView();
  return { mm: { ...reports.mm, title }, in: { ...reports.in, title } };
}

describe("text and drawing", () => {
  it("a click on an edge shows its text, and a drag across it does not", async () => {
    await openShown();
    const { page } = preview;
    const rightmost = await preview.screenOf({ x: -42 + 5.25, y: 0 });
    await page.mouse.click(rightmost.x, rightmost.y);
    expect(await preview.said("reveal")).toEqual([{ type: "reveal", source: { start: 580, end: 610 } }]);
    await page.mouse.move(rightmost.x, rightmost.y);
    await page.mouse.down();
    await page.mouse.move(rightmost.x + 30, rightmost.y + 10);
    await page.mouse.up();
    expect(await preview.said("reveal")).toHaveLength(1);
  });

  it("Enter on an edge does the same, with arrows from edge to edge", async () => {
    await openShown();
    const { page } = preview;
    await page.locator(".edge").first().focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    expect(await preview.said("reveal")).toEqual([{ type: "reveal", source: { start: 240, end: 258 } }]);
    expect(await page.locator('.edge[tabindex="0"]').count()).toBe(1);
  });

  it("the cursor in the text marks its edge by thickness too", async () => {
    await openShown();
    await preview.send({ type: "highlight", source: { start: 545, end: 545 } });
    const marked = preview.page.locator(".edge.marked");
    expect(await marked.count()).toBe(1);
    await expect.poll(() => preview.styleOf(".edge.marked .edge-line", "strokeWidth")).toBe("4px");
    expect(await preview.styleOf(".edge:not(.marked) .edge-line", "strokeWidth")).toBe("1.6px");
    await preview.send({ type: "highlight", source: null });
    expect(await marked.count()).toBe(0);
  });

  it("hovering an edge reads its length, angle or radius", async () => {
    await openShown();
    const { x, y } = await preview.screenOf({ x: 0, y: -11 });
    await preview.page.mouse.move(x, y);
    await preview.settle();
    expect(await preview.page.locator(".readout").textContent()).toBe(
      "Bore: Circle, diameter 22 mm, middle 0 mm from the axis",
    );
  });

  it("a problem leads to its text from the list and from its sign", async () => {
    await openShown();
    await preview.page.getByRole("button", { name: /^Warning: Only 7.4 mm.*line 27$/ }).click();
    await preview.page.locator(".problem-mark").nth(1).locator(".sign-body").click({ force: true });
    expect(await preview.said("reveal")).toEqual([
      { type: "reveal", source: { start: 620, end: 650 } },
      { type: "reveal", source: { start: 800, end: 825 } },
    ]);
  });
});

describe("dragging a point", () => {
  const grab = async (index: number) => {
    const { page } = preview;
    const { x, y } = await middleOf(".handle", index);
    await page.mouse.move(x, y);
    await page.mouse.down();
    return { x, y };
  };

  it("shows where it would go, and tells the host where it was put", async () => {
    await openShown();
    const { page, settle } = preview;
    const scale = Number(/scale\(([\d.]+)\)/.exec((await planeTransform()) ?? "")?.[1]);
    const { x, y } = await grab(0);
    await page.mouse.move(x - 10 * scale, y - 20 * scale, { steps: 4 });
    await settle();
    expect(await page.locator(".move-ghost").isVisible()).toBe(true);
    expect(await page.locator(".readout").textContent()).toMatch(
      /^Moving to x 120 mm, y 20 mm, steps of 1 mm/,
    );
    await page.mouse.up();
    expect(await preview.said("movePoint")).toEqual([
      { type: "movePoint", request: 1, version: 1, handle: 0, to: { x: 120, y: 20 } },
    ]);
    // It stays there until the text answers.
    expect(await page.locator(".move-ghost").isVisible()).toBe(true);
    await preview.show(madeUpView({ version: 2 }));
    expect(await page.locator(".move-ghost").isVisible()).toBe(false);
  });

  it("moves only along what the text lets it", async () => {
    await openShown();
    const { page } = preview;
    const { x, y } = await grab(2);
    await page.mouse.move(x - 30, y - 40, { steps: 3 });
    await page.mouse.up();
    const [moved] = await preview.said("movePoint");
    expect(moved?.handle).toBe(2);
    expect(moved?.to.y).toBe(14);
    expect(moved?.to.x).toBeLessThan(-100);
    // The point that is computed has no handle.
    expect(await page.locator(".handle").count()).toBe(4);
  });

  it("is undone by Escape, and by letting go where it was", async () => {
    await openShown();
    const { page, settle } = preview;
    const { x, y } = await grab(0);
    await page.mouse.move(x + 30, y + 30, { steps: 3 });
    await page.keyboard.press("Escape");
    await settle();
    expect(await page.locator(".move-ghost").isVisible()).toBe(false);
    await page.mouse.up();
    await grab(0);
    await page.mouse.up();
    expect(await preview.said("movePoint")).toEqual([]);
    // Such a click asks for the text of the point.
    expect(await preview.said("reveal")).toEqual([{ type: "reveal", source: { start: 205, end: 217 } }]);
  });

  it("goes on in a drawing that comes on the way, where the point still stands in it", async () => {
    await openShown();
    const { page, settle } = preview;
    const scale = Number(/scale\(([\d.]+)\)/.exec((await planeTransform()) ?? "")?.[1]);
    const { x, y } = await grab(0);
    await page.mouse.move(x - 5 * scale, y - 5 * scale, { steps: 2 });
    await preview.show(madeUpView({ version: 2 }));
    await page.mouse.move(x - 10 * scale, y - 20 * scale, { steps: 2 });
    await settle();
    expect(await page.locator(".move-ghost").isVisible()).toBe(true);
    await page.mouse.up();
    expect(await preview.said("movePoint")).toEqual([
      { type: "movePoint", request: 1, version: 2, handle: 0, to: { x: 120, y: 20 } },
    ]);
  });

  it("goes back with a message when the host could not do it", async () => {
    await openShown();
    const { page } = preview;
    const { x, y } = await grab(1);
    await page.mouse.move(x + 40, y + 40, { steps: 3 });
    await page.mouse.up();
    await preview.send({ type: "failed", request: 99, message: "Another one." });
    expect(await page.locator(".move-ghost").isVisible()).toBe(true);
    await preview.send({ type: "failed", request: 1, message: "The text has changed." });
    expect(await page.locator(".move-ghost").isVisible()).toBe(false);
    const failure = page.getByRole("status").filter({ hasText: "Not moved: The text has changed." });
    expect(await failure.isVisible()).toBe(true);
    const back = await middleOf(".handle", 1);
    expect(Math.hypot(back.x - x, back.y - y)).toBeLessThan(1);
  });

  it("works by keys: arrows, Shift for less, Enter and Escape", async () => {
    await openShown();
    const { page } = preview;
    await page.locator(".handle").first().focus();
    await page.keyboard.press("PageDown");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Shift+ArrowUp");
    expect(await page.getByRole("status").first().textContent()).toBeDefined();
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Escape");
    expect(await preview.said("movePoint")).toEqual([
      { type: "movePoint", request: 1, version: 1, handle: 1, to: { x: 21, y: -24.9 } },
    ]);
    expect(await page.locator('[role="status"]').last().textContent()).toBe("Put back.");
  });

  it("is not offered on a drawing that is stale, nor with the switch off", async () => {
    await openShown();
    await preview.page.getByRole("checkbox", { name: "Points to drag" }).uncheck();
    await preview.settle();
    expect(await preview.page.locator(".handle").count()).toBe(0);
    await preview.page.getByRole("checkbox", { name: "Points to drag" }).check();
    await preview.show(madeUpView({ version: 2, stale: true }));
    expect(await preview.page.locator(".handle").count()).toBe(0);
  });
});

describe("a stale drawing", () => {
  it("says so over the drawing and to those who do not see it, until the text works again", async () => {
    await openShown();
    const badge = preview.page.locator(".stale-badge", {
      hasText: "The text has errors: this is the last drawing that worked",
    });
    expect(await badge.isVisible()).toBe(false);
    await preview.show(madeUpView({ version: 2, stale: true }));
    expect(await badge.isVisible()).toBe(true);
    expect(await preview.page.locator(".canvas").getAttribute("aria-label")).toContain("Last good drawing");
    const heard = preview.page.locator('[role="status"]').last();
    expect(await heard.textContent()).toBe("");
    await expect.poll(() => heard.textContent(), { timeout: 5000 }).toContain("The text has errors");
    await preview.show(madeUpView({ version: 3 }));
    expect(await badge.isVisible()).toBe(false);
  });

  it("is not told with every key: only once the text has rested", async () => {
    await openShown();
    for (let version = 2; version < 8; version += 1)
      await preview.show(madeUpView({ version, stale: version % 2 === 0 }));
    await preview.page.waitForTimeout(1700);
    expect(await preview.page.locator('[role="status"]').last().textContent()).toBe("");
  });
});

describe("what is chosen", () => {
  it("a variant, by its name or as written", async () => {
    await openShown();
    await preview.page.getByLabel("Variant", { exact: true }).selectOption({ label: "practice speed" });
    await preview.page.getByLabel("Variant", { exact: true }).selectOption({ index: 0 });
    expect(await preview.said("chooseVariant")).toEqual([
      { type: "chooseVariant", variant: "practice speed" },
      { type: "chooseVariant", variant: null },
    ]);
  });

  it("units, at once and without asking", async () => {
    await openShown();
    const mass = preview.page.locator(".key-figure").first();
    expect(await mass.textContent()).toContain("1.152 kg");
    await preview.page.getByLabel("Inches").check({ force: true });
    await preview.settle();
    expect(await mass.textContent()).toContain("2.541 lb");
    expect(await preview.page.locator(".scale-label").textContent()).toMatch(/ in$/);
    expect(await preview.said("chooseUnits")).toEqual([{ type: "chooseUnits", units: "in" }]);
  });

  it("the cut file and the cautions", async () => {
    await openShown();
    await preview.page.getByRole("button", { name: "Export cut file…" }).click();
    await preview.page.getByRole("button", { name: "All cautions" }).click();
    expect(await preview.said("exportCutFile")).toHaveLength(1);
    expect(await preview.said("showCautions")).toHaveLength(1);
  });

  it("dimensions, on request", async () => {
    await openShown();
    expect(await preview.page.locator(".dimension").count()).toBe(0);
    await preview.page.getByLabel("Dimensions").check();
    await preview.settle();
    const labels = await preview.page.locator(".dimension-label").allTextContents();
    expect(labels).toContain("226 mm wide");
    expect(labels).toContain("2 × ⌀ 10.5 mm at radius 42 mm");
  });
});

describe("the cautions", () => {
  it("are always in sight, however far the page is scrolled", async () => {
    await openShown({ height: 400 });
    const seen = async () => {
      const box = await preview.page.locator("footer").boundingBox();
      return box !== null && box.y >= 0 && box.y + box.height <= 401;
    };
    expect(await seen()).toBe(true);
    await preview.page.evaluate("window.scrollTo(0, 600)");
    expect(await seen()).toBe(true);
    expect(await preview.page.locator("footer").textContent()).toContain("Spinning bars kill");
  });
});

describe("the bite chart", () => {
  it("has a table that says the same at every point", async () => {
    await openShown();
    // All in one go: forty steps from outside would take seconds.
    const told = await preview.page.evaluate(`(async () => {
      const chart = document.querySelector(".chart");
      const press = async (key) => {
        chart.dispatchEvent(new KeyboardEvent("keydown", { key }));
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      };
      const told = [];
      await press("Home");
      for (const row of document.querySelectorAll(".bite tbody tr")) {
        told.push([chart.getAttribute("aria-valuetext"), ...[...row.children].map((cell) => cell.textContent)]);
        await press("ArrowRight");
      }
      return told;
    })()`);
    const rows = told as readonly (readonly string[])[];
    expect(rows).toHaveLength(CURVE.length);
    for (const [text, closing, deepest, mean, eight, ideal, square, tooth] of rows)
      expect(text).toBe(
        `At ${closing} m/s: deepest ${deepest} mm, mean ${mean} mm, eight in ten ${eight?.replace("–", "to")} mm, ideal ${ideal} mm, ${square} of strikes square, ${tooth} on a tooth`,
      );
    expect(new Set(rows.map(([text]) => text)).size).toBe(CURVE.length);
  });

  it("tells its lines apart by dashes as well as colour", async () => {
    await openShown();
    const dashes = await Promise.all(
      ["deepest", "mean", "ideal"].map((name) => preview.styleOf(`.chart .curve-${name}`, "strokeDasharray")),
    );
    expect(new Set(dashes).size).toBe(3);
    expect(await preview.page.locator(".chart .speed-label").allTextContents()).toEqual([
      "clean up to 3.1 m/s",
      "only teeth up to 4.2 m/s",
    ]);
    expect(await preview.page.locator(".bite-limits").textContent()).toBe(
      "Clean bite up to 3.1 m/s. Only teeth strike up to 4.2 m/s.",
    );
    // The band has an edge as well as a tint.
    expect(await preview.styleOf(".chart .chart-band", "strokeWidth")).toBe("1px");
  });

  it("is read under the pointer, and draws the depth into the tip circle", async () => {
    await openShown({ height: 1400 });
    const box = await preview.page.locator(".chart").boundingBox();
    await preview.page.locator(".chart").hover({ position: { x: (box?.width ?? 0) - 14, y: 60 } });
    await preview.settle();
    expect(await preview.page.locator(".chart-readout").textContent()).toMatch(
      /^At 6 m\/s: deepest 59.61 mm/,
    );
    expect(await preview.page.locator(".bite-ring").isVisible()).toBe(true);
  });
});

describe("the strikes", () => {
  /** The sample's tooth strikes square, skids behind, and past some speed its tail strikes too. */
  const showSample = async (options: OpenOptions = {}) => {
    await open({ height: 1600, ...options });
    const { view } = showText(ONE_TOOTH.replace("to 6 m/s", "to 12 m/s")).output;
    await preview.show(view);
    return view;
  };
  const bandsOf = async (kind: string) => preview.page.locator(`.strikes .strike-${kind}`).count();

  it("are painted on the outline for the fastest speed, the wider the more is struck", async () => {
    const view = await showSample();
    const bands = await preview.page.evaluate(
      `[...document.querySelectorAll(".strikes .strike-body")].map((band) =>
        [Number(band.getAttribute("stroke-width")), band.getAttribute("d")])`,
    );
    const widths = (bands as [number, string][]).map(([width]) => width);
    expect(widths.length).toBeGreaterThan(2);
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    expect(await bandsOf("square")).toBeGreaterThan(0);
    const fastest = view.bite?.curve.at(-1);
    expect(await preview.page.locator(".strike-key").textContent()).toContain("At 12 m/s:");
    expect(await preview.page.locator(".strike-key").textContent()).toContain(
      `Off the teeth ${Math.round(100 * (1 - (fastest?.toothShare ?? 0)))} %`,
    );
  });

  it("follow the speed that is read in the chart, and stay with it", async () => {
    await showSample();
    const { page, settle } = preview;
    const off = await bandsOf("off");
    expect(off).toBeGreaterThan(0);
    await page.locator(".chart").focus();
    await page.keyboard.press("Home");
    await settle();
    expect(await bandsOf("off")).toBe(0);
    await page.locator(".chart").blur();
    await settle();
    expect(await page.locator(".strike-key").textContent()).toContain("At 0.5 m/s:");
    expect(await bandsOf("off")).toBe(0);
  });

  it("are told apart by pattern as well as colour", async () => {
    await showSample();
    const dashes = await Promise.all(
      ["square", "skidding", "off"].map((kind) =>
        preview.styleOf(`.strike-key .strike-${kind} .strike-body`, "strokeDasharray"),
      ),
    );
    expect(new Set(dashes).size).toBe(3);
  });

  it("are hidden on request, and stay so", async () => {
    const view = await showSample();
    const { page, settle } = preview;
    await page.getByLabel("Strikes", { exact: true }).uncheck();
    await settle();
    expect(await page.locator(".strike").first().isVisible()).toBe(false);
    expect(await page.locator(".strike-key").isVisible()).toBe(false);
    await page.reload();
    await preview.show(view);
    expect(await page.getByLabel("Strikes", { exact: true }).isChecked()).toBe(false);
    expect(await page.locator(".strikes .strike").count()).toBe(0);
  });

  it("are listed in words, each leading to its text by keyboard", async () => {
    const view = await showSample();
    const { page } = preview;
    await page.locator("summary", { hasText: "What strikes first at 12 m/s" }).click();
    const rows = page.locator(".strike-row");
    await rows.first().waitFor();
    const words = await rows.allTextContents();
    expect(words[0]).toMatch(
      /^\d+ %(Square on a tooth|Off the teeth)Outline: (Line|Arc), .*Depth [\d.]+ to [\d.]+ mm, strike angle [\d.]+°( to [\d.]+°)?, radius [\d.]+ to [\d.]+ mm$/,
    );
    const shares = words.map((text) => Number.parseFloat(text));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeGreaterThan(97);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThan(103);
    await rows.first().focus();
    await page.keyboard.press("Enter");
    const [said] = await preview.said("reveal");
    const sources = view.drawing?.loops[0]?.segments.map(({ source }) => source);
    expect(sources).toContainEqual(said?.source);
  });

  it("paint corners as dots, for a face strikes nothing else of a bar of straight lines", async () => {
    await open({ height: 1600 });
    await preview.show(
      showText(sampleText("little-puffin-print-test").replace("target edge", "target face")).output.view,
    );
    expect(await preview.page.locator(".strike-corner").count()).toBeGreaterThan(0);
    const dot = await preview.page.locator(".strike-corner .strike-body").first().getAttribute("d");
    const [from, to] = (dot ?? "").slice(1).split("L");
    expect(from).toBe(to);
  });
});

describe("one approach", () => {
  const openApproach = async (options: OpenOptions = {}, text = ONE_TOOTH) => {
    await open({ height: 2400, ...options });
    const { view } = showText(text).output;
    await preview.show(view);
    await preview.page.locator("summary", { hasText: "One approach" }).click();
    await preview.page.locator(".approach-bar").waitFor();
    await preview.settle();
    return view;
  };
  const scrub = async (name: string, value: number) => {
    await preview.page.getByLabel(name, { exact: true }).fill(String(value));
    await preview.settle();
  };
  const barTransform = () => preview.page.locator(".approach-bar").getAttribute("transform");
  const words = () => preview.page.locator(".approach-words").textContent();

  it("stands at its first contact, with the depth, what is struck, and the way to its text", async () => {
    const view = await openApproach({ reducedMotion: true });
    const { page } = preview;
    const profile = shownProfile(view);
    if (!profile || !view.bite) throw new Error("no bite");
    for (const [degrees, mPerS] of [
      [0, 6],
      [117, 3.25],
      [245, 0.5],
    ] as const) {
      await scrub("Starting phase", degrees);
      await scrub("Closing speed", mPerS);
      const advanceMm = (mPerS * 1000) / view.bite.radPerS;
      const contact = contactAt(profile, advanceMm, (degrees * Math.PI) / 180);
      const depth = `${Number(contact.depthMm.toFixed(2))} mm`;
      expect(await words()).toMatch(
        new RegExp(`^${depth} deep\\. (Square|Skidding) on a tooth, strike angle`),
      );
      expect(await page.locator(".contact .dimension-label").textContent()).toBe(depth);
    }
    await page.locator(".approach-words .link").click();
    const [said] = await preview.said("reveal");
    expect(view.drawing?.loops[0]?.segments.map(({ source }) => source)).toContainEqual(said?.source);
  });

  it("runs to the contact and stops there, and can be stopped on the way", async () => {
    await openApproach();
    const { page } = preview;
    const course = page.getByLabel("Course");
    await page.getByRole("button", { name: "Play" }).click();
    await expect.poll(() => page.locator(".contact").isVisible()).toBe(false);
    await expect.poll(() => course.inputValue().then(Number)).toBeGreaterThan(0.05);
    await page.getByRole("button", { name: "Pause" }).click();
    const stopped = await course.inputValue();
    expect(Number(stopped)).toBeLessThan(1);
    await page.waitForTimeout(120);
    expect(await course.inputValue()).toBe(stopped);
    await page.getByRole("button", { name: "Play" }).click();
    await expect.poll(() => course.inputValue(), { timeout: 15_000 }).toBe("1");
    expect(await page.getByRole("button", { name: "Play" }).isVisible()).toBe(true);
    expect(await page.locator(".contact").isVisible()).toBe(true);
    expect(await page.locator("[role=status]").allTextContents()).toContainEqual(
      expect.stringMatching(/mm deep\. .* strike angle/),
    );
    expect(await page.getByText("Shown 200 times slower").isVisible()).toBe(true);
  }, 30_000);

  it("moves only by its sliders where motion is reduced", async () => {
    await openApproach({ reducedMotion: true });
    const { page } = preview;
    expect(await page.locator(".approach-play").isVisible()).toBe(false);
    expect(await page.getByText("Motion is reduced").isVisible()).toBe(true);
    const still = await barTransform();
    await page.waitForTimeout(200);
    expect(await barTransform()).toBe(still);
    await scrub("Course", 0.4);
    expect(await barTransform()).not.toBe(still);
    expect(await page.locator(".contact").isVisible()).toBe(false);
    expect(await page.getByLabel("Course").getAttribute("aria-valuetext")).toMatch(
      /^The bar turns [\d.]+° more until contact\.$/,
    );
  });

  it("puts bar and target where they touch, whatever the target", async () => {
    for (const target of ["edge", "round 8 mm offset 20 mm"]) {
      await openApproach({ reducedMotion: true }, ONE_TOOTH.replace("target edge", `target ${target}`));
      const apart = await preview.page.evaluate(`(() => {
        const box = (selector) => document.querySelector(selector).getBoundingClientRect();
        const middle = ({ x, y, width, height }) => [x + width / 2, y + height / 2];
        const [spotX, spotY] = middle(box(".contact-spot"));
        const body = box(".approach-target .target-body");
        const [midX, midY] = middle(body);
        return ${target === "edge"} ? Math.hypot(spotX - body.x, spotY - midY)
          : Math.hypot(spotX - midX, spotY - midY) - body.width / 2;
      })()`);
      expect(Math.abs(Number(apart)), target).toBeLessThan(2);
    }
  });

  it("looks closer on request, and follows the speed that is read in the chart", async () => {
    await openApproach({ reducedMotion: true });
    const { page, settle } = preview;
    const width = async () => (await page.locator(".approach-bar").boundingBox())?.width ?? 0;
    const whole = await width();
    await page.getByLabel("Close up").check();
    await settle();
    expect(await width()).toBeGreaterThan(2 * whole);
    await page.locator(".chart").focus();
    await page.keyboard.press("Home");
    await settle();
    expect(await page.getByLabel("Closing speed", { exact: true }).inputValue()).toBe("0.5");
  });

  it("stays open when the page is drawn anew before a click is told of", async () => {
    await openShown();
    await preview.page.evaluate(`(async () => {
      document.querySelector(".approach").closest("details").querySelector("summary").click();
      document.querySelector(".chart").dispatchEvent(new PointerEvent("pointermove"));
    })()`);
    await preview.settle();
    await preview.settle();
    expect(await preview.page.locator(".approach").isVisible()).toBe(true);
  });
});

describe("after a reload", () => {
  it("everything is as it was left", async () => {
    await openShown({ reducedMotion: true });
    const { page, settle } = preview;
    await page.getByLabel("Inches").check({ force: true });
    await page.getByLabel("Dimensions").check();
    await page.locator("summary", { hasText: "Spin" }).click();
    await page.getByRole("button", { name: "Zoom in" }).click();
    await preview.show(madeUpView({ version: 2, variant: "long tail" }));
    await settle();
    const [before, place] = [await page.locator(".key-figure").first().textContent(), await planeTransform()];

    await page.reload();
    expect(await preview.said("ready")).toHaveLength(1);
    // A host that has been restarted counts anew and begins with the bar as written.
    await preview.show(madeUpView({ version: 1 }));
    expect(await planeTransform()).toBe(place);
    expect(await page.locator(".key-figure").first().textContent()).toBe(before);
    expect(await page.getByLabel("Dimensions").isChecked()).toBe(true);
    expect(await page.locator("details[open]", { hasText: "Tip speed" }).count()).toBe(1);
    expect(await preview.said("chooseVariant")).toEqual([{ type: "chooseVariant", variant: "long tail" }]);
  });

  it("another document begins with its own place, and a state of another release is passed over", async () => {
    const state = { documentUri: "file:///gone.bar", viewport: { centre: { x: 9999, y: 0 } } };
    await openShown({ state });
    const canvas = await preview.page.locator(".canvas").boundingBox();
    const plate = await preview.page.locator(".plate").boundingBox();
    expect(plate && canvas && plate.x > canvas.x).toBe(true);
  });
});

describe("texts", () => {
  it("are those the host gives, the others English", async () => {
    await openShown({ strings: { fit: "Einpassen", dimensions: "Maße <b>" } });
    expect(await preview.page.locator(".tool").last().textContent()).toBe("Einpassen");
    expect(await preview.page.getByLabel("Maße <b>").count()).toBe(1);
    expect(await preview.page.getByRole("button", { name: "Export cut file…" }).count()).toBe(1);
  });
});

describe("for everybody", () => {
  const axe = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");

  /** What axe-core finds wrong, each as its rule with the elements. */
  async function violations(): Promise<unknown> {
    // The content policy forbids it as a script of the page, not as one of the test.
    await preview.page.evaluate(axe);
    return preview.page.evaluate(
      "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => [id, nodes.map(({ target, any }) => [String(target), any[0]?.message])]))",
    );
  }

  it.each(THEMES)(
    "axe-core finds nothing in the theme $name",
    async (theme) => {
      await openShown({ theme });
      const { page, settle } = preview;
      await page.evaluate("for (const fold of document.querySelectorAll('details')) fold.open = true");
      await page.getByLabel("Explain the figures").check();
      await page.getByLabel("Dimensions").check();
      await settle();
      expect(await violations()).toEqual([]);
    },
    30_000,
  );

  it("axe-core finds nothing in a stale drawing, nor where there is none", async () => {
    await openShown();
    await preview.show(madeUpView({ version: 2, stale: true }));
    expect(await violations()).toEqual([]);
    await preview.show(madeUpView({ version: 3, drawing: null, ghosts: [], bite: null, problems: [] }));
    expect(await violations()).toEqual([]);
  }, 30_000);

  it("nothing is wider than a panel of 250 px, and every control has its name", async () => {
    await openShown({ width: 250 });
    const { page } = preview;
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(250);
    const nameless = await page.evaluate(
      `[...document.querySelectorAll("button, input, select, [role=button], [role=slider]")].filter((control) =>
        !(control.textContent.trim() || control.getAttribute("aria-label") || control.labels?.length)).length`,
    );
    expect(nameless).toBe(0);
  });

  it("everything is reached by the Tab key, each group as one stop", async () => {
    await openShown();
    const { page } = preview;
    const stops: string[] = [];
    for (let i = 0; i < 40; i += 1) {
      await page.keyboard.press("Tab");
      const stop = String(
        await page.evaluate("document.activeElement.getAttribute('class') || document.activeElement.tagName"),
      );
      if (stop === "BODY" || (stop === "SELECT" && stops.length > 0)) break;
      stops.push(stop);
    }
    for (const stop of [
      "SELECT",
      "main-action",
      "canvas",
      "edge",
      "handle",
      "tool",
      "SUMMARY",
      "problem",
      "chart",
      "link",
    ])
      expect(stops.filter((other) => other.startsWith(stop)).length, stop).toBeGreaterThan(0);
    expect(stops.filter((stop) => stop.startsWith("edge"))).toHaveLength(1);
    expect(stops.filter((stop) => stop.startsWith("handle"))).toHaveLength(1);
  });

  it("the drawing stays to be seen where the system forces its colours", async () => {
    await openShown({ forcedColors: true });
    const stroke = await preview.styleOf(".edge-line", "stroke");
    const paper = await preview.styleOf("body", "backgroundColor");
    expect(stroke).not.toBe(paper);
  });
});
