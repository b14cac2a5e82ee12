import type { IncomingMessage } from "node:http";
import { FolderError } from "./folder-error.ts";

/**
 * The whole body of a request. Throws a FolderError: `too-large` above the limit, `failed` where the sender breaks
 * off. Nothing is acted on before the last byte is here. What is too much is read to the end but not kept: a sender
 * that is cut off in the middle never sees the answer.
 */
export async function readBody(request: IncomingMessage, mostBytes: number): Promise<Uint8Array> {
  let parts: Buffer[] = [];
  let size = 0;
  try {
    for await (const part of request as AsyncIterable<Buffer>) {
      size += part.length;
      if (size <= mostBytes) parts.push(part);
      else parts = [];
    }
  } catch {
    throw new FolderError("failed", "The upload broke off.");
  }
  if (size <= mostBytes) return Buffer.concat(parts);
  throw new FolderError("too-large", `A file of more than ${mostBytes} bytes is not taken.`);
}
