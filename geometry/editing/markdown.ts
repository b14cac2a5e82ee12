/** Small pieces of markdown for hovers and completions. */

/** A stretch of a file, on one line. */
export function codeText(text: string): string {
  // A text that holds a backquote stands between two of them.
  return text.includes("`") ? `\`\` ${text} \`\`` : `\`${text}\``;
}

/** Lines of a file as a block. */
export function codeBlock(text: string): string {
  return `\`\`\`bar\n${text}\n\`\`\``;
}

/** Words of a file as plain words: nothing in them is taken for markdown. */
export function plainText(text: string): string {
  return text
    .replace(/[\\`*_[\]|~]/g, "\\$&")
    .replace(/[<>&]/g, (sign) => `&#${sign.charCodeAt(0)};`)
    .replace(/^(\s*\d*)([#+\-.)=])/, "$1\\$2");
}

/** A stretch of text on one line: runs of blanks and line ends become one blank, comments are left out. */
export function oneLine(text: string): string {
  return text
    .replace(/#[^\r\n]*/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}
