/** Every kind of job the worker knows: a new study adds its own here. The page imports the types alone. */

import { aimJob } from "./aim-job.ts";
import { aimLineJob } from "./aim-line-job.ts";
import { asMadeJob } from "./as-made-job.ts";
import { compareJob } from "./compare-job.ts";
import { drillingJob } from "./drilling-job.ts";
import type { Job, Outcome } from "./job.ts";
import { movableJob } from "./movable-job.ts";
import { varyJob } from "./vary-job.ts";

export const JOBS = [compareJob, movableJob, varyJob, aimJob, aimLineJob, drillingJob, asMadeJob] as const;

type AnyJob = (typeof JOBS)[number];

export type JobKind = AnyJob["kind"];
type JobOf<Kind extends JobKind> = Extract<AnyJob, { kind: Kind }>;
export type JobInput<Kind extends JobKind> =
  JobOf<Kind> extends Job<Kind, infer Input, unknown> ? Input : never;
export type JobResult<Kind extends JobKind> =
  JobOf<Kind> extends { run(...args: never[]): Outcome<infer Result> | Promise<Outcome<infer Result>> }
    ? Result
    : never;
