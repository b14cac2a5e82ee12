import type { FolderErrorCode } from "./protocol.ts";

/** A file operation that failed for a reason the editor can show. */
export class FolderError extends Error {
  readonly code: FolderErrorCode;

  constructor(code: FolderErrorCode, message: string) {
    super(message);
    this.name = "FolderError";
    this.code = code;
  }
}

const BY_SYSTEM_CODE: Readonly<Record<string, FolderErrorCode>> = {
  ENOENT: "not-found",
  EEXIST: "exists",
  ENOTEMPTY: "exists",
  EISDIR: "is-folder",
  ENOTDIR: "not-folder",
  EACCES: "refused",
  EPERM: "refused",
  ELOOP: "refused",
  ENAMETOOLONG: "refused",
};

/** The system's error code (`ENOENT` and so on), or null where the value is no system error. */
export function systemCode(error: unknown): string | null {
  if (!(error instanceof Error) || !("code" in error)) return null;
  return typeof error.code === "string" ? error.code : null;
}

/** Turns whatever a file operation threw into a FolderError. System messages name full paths, so they stay here. */
export function toFolderError(error: unknown): FolderError {
  if (error instanceof FolderError) return error;
  const code = systemCode(error);
  return new FolderError(BY_SYSTEM_CODE[code ?? ""] ?? "failed", code ?? "The file operation failed.");
}
