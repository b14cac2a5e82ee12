import { describe, expect, it } from "vitest";
import { type CompareInput, compareJob } from "../../extension/studies/worker/compare-job.ts";
import { isWorkerMessage, type WorkerMessage } from "../../extension/studies/worker/job.ts";
import { JOBS } from "../../extension/studies/worker/jobs.ts";
import { type AnyJob, serve } from "../../extension/studies/worker/serve.ts";
import { SAMPLES } from "../samples/samples.ts";
import { fileOf } from "./rig.ts";

function served(jobs: readonly AnyJob[] = JOBS, now = () => 0) {
  const said: WorkerMessage[] = [];
  const answer = serve(jobs, (message) => said.push(structuredClone(message)), now);
  return { said, answer };
}

const HERON = SAMPLES.find(({ file }) => file.startsWith("pickled"))?.text ?? "";
const LIMPET = SAMPLES.find(({ file }) => file.startsWith("brass"))?.text ?? "";
const INPUT: CompareInput = {
  files: [fileOf("heron.bar", HERON)],
  settings: {},
  reference: null,
  hidden: [],
};

describe("the worker", () => {
  it("answers each request once, by its id", async () => {
    const { said, answer } = served();
    await answer({ id: 7, kind: "compare", input: INPUT });
    expect(said).toHaveLength(1);
    expect(said[0]).toMatchObject({ type: "result", id: 7 });
    expect(said.every(isWorkerMessage)).toBe(true);
  });

  it("tells a fault for an unknown kind, an input that is none, and a bug", async () => {
    const broken: AnyJob = {
      kind: "broken",
      isInput: (value): value is unknown => value === 1,
      run: () => {
        throw new Error("bug");
      },
    };
    const { said, answer } = served([broken]);
    await answer({ id: 1, kind: "gone", input: 1 });
    await answer({ id: 2, kind: "broken", input: 2 });
    await answer({ id: 3, kind: "broken", input: 1 });
    expect(said.map(({ type, id }) => `${type} ${id}`)).toEqual(["fault 1", "fault 2", "fault 3"]);
    expect(said[2]).toMatchObject({ reason: expect.stringContaining("bug") });
  });

  it("passes over what is no request", async () => {
    const { said, answer } = served();
    for (const message of [
      null,
      1,
      {},
      { id: -1, kind: "compare", input: INPUT },
      { id: 1, kind: "compare" },
    ])
      await answer(message);
    expect(said).toEqual([]);
  });

  it("tells progress no more often than an eye follows", async () => {
    let time = 0;
    const counting: AnyJob = {
      kind: "count",
      isInput: (value): value is unknown => value === 1,
      run: async (_, tell) => {
        for (let done = 0; done < 100; done += 1) {
          time += 10;
          tell({ done, total: 100 });
        }
        return { refused: "nothing found" };
      },
    };
    const { said, answer } = served([counting], () => time);
    await answer({ id: 1, kind: "count", input: 1 });
    expect(said.filter(({ type }) => type === "progress")).toHaveLength(20);
    expect(said.at(-1)).toEqual({ type: "refused", id: 1, reason: "nothing found" });
  });
});

describe("comparing in the worker", () => {
  const resultOf = async (input: CompareInput) => {
    const outcome = await compareJob.run(input, () => {});
    if ("refused" in outcome) throw new Error(outcome.refused);
    return outcome.result;
  };

  it("compares the bar, its variants and the bars of other files", async () => {
    const files = [fileOf("heron.bar", HERON), fileOf("limpet.bar", LIMPET)];
    const result = await resultOf({ ...INPUT, files });
    expect(result.choices.map(({ title }) => title)).toEqual([
      "heron.bar",
      "heron.bar: practice speed",
      "heron.bar: long reach",
      "limpet.bar",
    ]);
    expect(result.compared).toEqual(result.choices.map(({ key }) => key));
    expect(result.tables.mm.columns).toHaveLength(4);
    expect(result.outlines?.paths.every((path) => path?.startsWith("M"))).toBe(true);
    // True arcs.
    expect(result.outlines?.paths[0]).toContain("A");
    expect(result.bite?.maxMm.map((curve) => curve?.length)).toEqual([40, 40, 40, 40]);
    expect(structuredClone(result)).toEqual(result);
  });

  it("puts the reference first, and leaves out what is hidden but never the reference", async () => {
    const { choices } = await resultOf(INPUT);
    const [bar, slow, long] = choices.map(({ key }) => key);
    const input = { ...INPUT, reference: long ?? null, hidden: [slow ?? "", long ?? ""] };
    const result = await resultOf(input);
    expect(result.compared).toEqual([long, bar]);
    expect(result.tables.in.columns).toEqual(["long reach", "as written"]);
    expect(result.choices).toHaveLength(3);
    expect((await resultOf({ ...INPUT, reference: "gone" })).compared[0]).toBe(bar);
  });

  it("tells two files of one name apart", async () => {
    const other = { ...fileOf("heron.bar", LIMPET), uri: "file:///other/heron.bar" };
    const { choices } = await resultOf({ ...INPUT, files: [fileOf("heron.bar", HERON), other] });
    expect(new Set(choices.map(({ title }) => title)).size).toBe(4);
  });

  it("says when the text is broken", async () => {
    expect((await resultOf(INPUT)).broken).toBe(false);
    const half = HERON.replace("line (-reach, 0 mm)", "line (-reach, ");
    expect((await resultOf({ ...INPUT, files: [fileOf("heron.bar", half)] })).broken).toBe(true);
  });

  it("refuses to compare nothing", async () => {
    expect(await compareJob.run({ ...INPUT, files: [] }, () => {})).toEqual({
      refused: "There is no bar to compare.",
    });
  });

  it("judges by the settings", async () => {
    const [strict, lax] = [
      await resultOf({ ...INPUT, settings: { squareStrikeDeg: 1 } }),
      await resultOf(INPUT),
    ];
    expect(strict.tables.mm).not.toEqual(lax.tables.mm);
  });
});
