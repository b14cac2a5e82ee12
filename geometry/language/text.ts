/** A stretch of source text: UTF-16 offsets, `start` included, `end` excluded. */
export interface TextRange {
  readonly start: number;
  readonly end: number;
}

/** Replace the text of a range. An empty range inserts; an empty `newText` deletes. */
export interface TextEdit extends TextRange {
  readonly newText: string;
}

/** A place as people count it: line and column from 1, columns in UTF-16 units. */
export interface LineColumn {
  readonly line: number;
  readonly column: number;
}
