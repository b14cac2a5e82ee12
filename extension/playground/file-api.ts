import type { IncomingMessage, ServerResponse } from "node:http";
import { FolderError, toFolderError } from "./folder-error.ts";
import { mediaType } from "./media-type.ts";
import type { FolderErrorCode, FolderErrorReply } from "./protocol.ts";
import { ROUTES } from "./protocol.ts";
import { readBody } from "./read-body.ts";
import type { ServedFolder } from "./served-folder.ts";

const STATUS: Readonly<Record<FolderErrorCode, number>> = {
  "not-found": 404,
  exists: 409,
  "is-folder": 409,
  "not-folder": 409,
  refused: 403,
  "too-large": 413,
  failed: 500,
};

/** One operation: reads its parameters and the body if it has one; what it returns is the reply. */
type Operation = (parameters: URLSearchParams, request: IncomingMessage) => Promise<Reply>;

type Reply =
  | { readonly status: 200; readonly type: string; readonly bytes: Uint8Array }
  | { readonly status: 204 };

/**
 * Also the reply for a file that is not there: the editor asks for many that rarely are, and a browser reports every
 * status of 400 and above as an error.
 */
const NOTHING: Reply = { status: 204 };

export interface FileApi {
  /** Answers a request below `/files/`; false where the address and method name no operation. */
  answer(
    path: string,
    parameters: URLSearchParams,
    request: IncomingMessage,
    response: ServerResponse,
  ): Promise<boolean>;
}

/** The file operations of a folder over HTTP (see ROUTES). Uploads above `mostBytes` are refused. */
export function createFileApi(folder: ServedFolder, mostBytes: number): FileApi {
  const operations = listOperations(folder, mostBytes);
  return {
    answer: async (path, parameters, request, response) => {
      const operation = operations.get(`${request.method} ${path}`);
      if (operation === undefined) return false;
      try {
        send(response, await operation(parameters, request));
      } catch (error) {
        sendError(response, error);
      }
      return true;
    },
  };
}

function listOperations(folder: ServedFolder, mostBytes: number): Map<string, Operation> {
  return new Map<string, Operation>([
    [`GET ${ROUTES.stat}`, async (p) => json(await folder.stat(text(p, "path")))],
    [`GET ${ROUTES.folder}`, async (p) => json(await folder.list(text(p, "path")))],
    [`GET ${ROUTES.all}`, async () => json(await folder.all())],
    [`GET ${ROUTES.content}`, async (p) => content(text(p, "path"), await folder.read(text(p, "path")))],
    [`PUT ${ROUTES.content}`, (p, request) => write(folder, p, request, mostBytes)],
    [`POST ${ROUTES.folder}`, (p) => done(folder.make(text(p, "path")))],
    [
      `POST ${ROUTES.rename}`,
      (p) => done(folder.rename(text(p, "from"), text(p, "to"), flag(p, "overwrite"))),
    ],
    [`DELETE ${ROUTES.entry}`, (p) => done(folder.remove(text(p, "path"), flag(p, "recursive")))],
  ]);
}

async function write(
  folder: ServedFolder,
  parameters: URLSearchParams,
  request: IncomingMessage,
  mostBytes: number,
): Promise<Reply> {
  const bytes = await readBody(request, mostBytes);
  const allow = { create: flag(parameters, "create"), overwrite: flag(parameters, "overwrite") };
  return done(folder.write(text(parameters, "path"), bytes, allow));
}

function text(parameters: URLSearchParams, name: string): string {
  const value = parameters.get(name);
  if (value === null) throw new FolderError("refused", `The request lacks "${name}".`);
  return value;
}

function flag(parameters: URLSearchParams, name: string): boolean {
  return parameters.get(name) === "1";
}

function json(value: unknown): Reply {
  return { status: 200, type: mediaType(".json"), bytes: Buffer.from(JSON.stringify(value)) };
}

function content(path: string, bytes: Uint8Array | null): Reply {
  return bytes === null ? NOTHING : { status: 200, type: mediaType(path), bytes };
}

async function done(operation: Promise<void>): Promise<Reply> {
  await operation;
  return NOTHING;
}

function send(response: ServerResponse, reply: Reply): void {
  response.setHeader("Cache-Control", "no-store");
  if (reply.status === 204) {
    response.writeHead(204).end();
    return;
  }
  response.writeHead(200, { "Content-Type": reply.type, "Content-Length": reply.bytes.byteLength });
  response.end(reply.bytes);
}

function sendError(response: ServerResponse, error: unknown): void {
  const { code, message } = toFolderError(error);
  const reply: FolderErrorReply = { code, message };
  response.writeHead(STATUS[code], { "Content-Type": mediaType(".json"), "Cache-Control": "no-store" });
  response.end(JSON.stringify(reply));
}
