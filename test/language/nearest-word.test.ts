import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestWord } from "../../geometry/language/nearest-word.ts";
import { OPTION_WORDS, STATEMENT_WORDS, UNIT_NAMES } from "../../geometry/language/vocabulary.ts";

const SEED = { seed: 21 };
const WORDS = [...STATEMENT_WORDS, ...OPTION_WORDS];

describe("nearestWord", () => {
  it.each([
    ["thikness", "thickness"], // one left out
    ["thiickness", "thickness"], // one too many
    ["thicknexs", "thickness"], // one changed
    ["thicknses", "thickness"], // two swapped
    ["OUTLINE", "outline"],
    ["hloe", "hole"],
    ["aproch", "approach"],
  ])("takes %s for %s", (word, meant) => {
    expect(nearestWord(word, WORDS)).toBe(meant);
  });

  it.each(["colour", "wiggle", "qz", "q", "", "thckns", "a".repeat(100)])("finds nothing near %j", (word) => {
    expect(nearestWord(word, WORDS)).toBeNull();
  });

  it("prefers a difference of case to any other", () => {
    expect(nearestWord("Mm", UNIT_NAMES)).toBe("mm");
    expect(nearestWord("mpa", UNIT_NAMES)).toBe("MPa");
    expect(nearestWord("khm", ["km", "kHm"])).toBe("kHm");
  });

  it("takes the first of equally near ones, and none of none", () => {
    expect(nearestWord("bat", ["cat", "rat"])).toBe("cat");
    expect(nearestWord("bat", [])).toBeNull();
  });

  it("does not take single letters for each other", () => {
    expect(nearestWord("x", ["y", "m"])).toBeNull();
    expect(nearestWord("mx", ["m"])).toBeNull();
    expect(nearestWord("M", ["m"])).toBe("m");
  });

  it("finds every word again after one slip", () => {
    const long = WORDS.filter((word) => word.length > 4);
    fc.assert(
      fc.property(
        fc.constantFrom(...long),
        fc.nat(),
        fc.constantFrom("drop", "double", "swap"),
        (word, at, slip) => {
          const i = at % (word.length - 1);
          const slipped = {
            drop: word.slice(0, i) + word.slice(i + 1),
            double: word.slice(0, i + 1) + word.slice(i),
            swap: word.slice(0, i) + word.charAt(i + 1) + word.charAt(i) + word.slice(i + 2),
          }[slip];
          expect(nearestWord(slipped, [word])).toBe(word);
        },
      ),
      SEED,
    );
  });
});
