/** Put values into the places `{0}`, `{1}` … of a text. A place without a value stays as it is. */
export function fill(text: string, ...values: readonly (string | number)[]): string {
  return text.replace(/\{(\d+)\}/g, (place, index: string) => String(values[Number(index)] ?? place));
}
