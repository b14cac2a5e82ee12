import * as vscode from "vscode";

/**
 * Writes a file whole or not at all: on the disk to a temporary file beside it, which then takes its place. Other file
 * systems promise as much of their own writes. Rejects with the editor's error.
 */
export async function writeWhole(uri: vscode.Uri, content: string): Promise<void> {
  const { fs } = vscode.workspace;
  const bytes = new TextEncoder().encode(content);
  if (uri.scheme !== "file") return fs.writeFile(uri, bytes);
  const temporary = uri.with({ path: `${uri.path}.${crypto.randomUUID().slice(0, 8)}.part` });
  try {
    await fs.writeFile(temporary, bytes);
    await fs.rename(temporary, uri, { overwrite: true });
  } catch (error) {
    await fs.delete(temporary).then(undefined, () => {});
    throw error;
  }
}
