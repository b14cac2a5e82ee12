/**
 * Letters and signs that are more than an ASCII one with accents: each word here is the letter followed by its usual
 * spelling without it. Greek and Cyrillic are spelled the common way: the result is a label, not a transcription.
 */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  [
    "ßss æae œoe øo đd ðd þth łl ħh ıi ŋng",
    "αa βv γg δd εe ζz ηi θth ιi κk λl μm νn ξx οo πp ρr σs ςs τt υy φf χch ψps ωo",
    "аa бb вv гg дd еe жzh зz иi кk лl мm нn оo пp рr сs тt уu фf хh цts чch шsh щshch ыy эe юyu яya",
    "єye іi ґg јj љlj њnj ћc ђdj џdz",
    '×x ÷/ ⁄/ °deg –- —- ‐- ‑- −- ‘\' ’\' “" ”" „" «" »"',
  ].flatMap((line) => line.split(" ").map((word) => [word.slice(0, 1), word.slice(1)] as const)),
);

/**
 * A name in printable ASCII: accents are dropped, Greek and Cyrillic spelled in Latin letters, what has no such
 * spelling left out, white space made single blanks.
 * @param fallback what to put where no letter or digit remains, as for a name in a script without an alphabet
 */
export function printableAscii(name: string, fallback: string): string {
  const text = [...name.normalize("NFKD")]
    .map(spell)
    .join("")
    .replace(/[^ -~\s]/g, "")
    .replace(/\s+/g, " ")
    .trim();
  return /[A-Za-z0-9]/.test(text) ? text : fallback;
}

function spell(letter: string): string {
  const lower = letter.toLowerCase();
  const spelling = SPELLINGS.get(lower);
  if (spelling === undefined) return letter;
  return lower === letter ? spelling : spelling.slice(0, 1).toUpperCase() + spelling.slice(1);
}
