import { JOBS } from "./jobs.ts";
import { serve } from "./serve.ts";

const answer = serve(
  JOBS,
  (message) => postMessage(message),
  () => performance.now(),
);

addEventListener("message", ({ data }: MessageEvent<unknown>) => void answer(data));
