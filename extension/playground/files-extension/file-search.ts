import * as vscode from "vscode";
import type { FolderClient } from "./folder-client.ts";

/** The editor's interface for finding files by name, which its published types do not hold yet. */
export interface FileSearchProvider {
  provideFileSearchResults(
    query: { readonly pattern: string },
    options: { readonly folder: vscode.Uri; readonly maxResults?: number },
  ): Promise<vscode.Uri[]>;
}

/** Finds files of the served folder by name. The editor ranks them; here only what cannot match is left out. */
export function createFileSearch(client: FolderClient): FileSearchProvider {
  return {
    provideFileSearchResults: async (query, options) => {
      const paths = await client.all();
      const found = paths.filter((path) => holdsInOrder(path.toLowerCase(), query.pattern.toLowerCase()));
      return found.slice(0, options.maxResults).map((path) => vscode.Uri.joinPath(options.folder, path));
    },
  };
}

/** Whether the letters of a pattern stand in a text in this order, others between them. */
function holdsInOrder(text: string, pattern: string): boolean {
  let from = 0;
  for (const letter of pattern) {
    const found = text.indexOf(letter, from);
    if (found < 0) return false;
    from = found + letter.length;
  }
  return true;
}
