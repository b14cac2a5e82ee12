/** Small run-time checks of unknown values, composed into checks of whole messages. */
export type Check<T> = (value: unknown) => value is T;

export const isString: Check<string> = (value) => typeof value === "string";
export const isBoolean: Check<boolean> = (value) => typeof value === "boolean";
export const isNull: Check<null> = (value) => value === null;

/** An object that is no list, whatever it holds. */
export const isObject: Check<{ readonly [name: string]: unknown }> = (
  value,
): value is { readonly [name: string]: unknown } =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** A finite number: NaN and the infinities are refused. */
export const isNumber: Check<number> = (value): value is number =>
  typeof value === "number" && Number.isFinite(value);

/** A whole number from 0, exactly held. */
export const isCount: Check<number> = (value): value is number =>
  Number.isSafeInteger(value) && Number(value) >= 0;

export function either<A, B>(a: Check<A>, b: Check<B>): Check<A | B> {
  return (value): value is A | B => a(value) || b(value);
}

export const orNull = <T>(check: Check<T>): Check<T | null> => either(check, isNull);

export function oneOf<const T extends string>(...words: readonly T[]): Check<T> {
  return (value): value is T => words.some((word) => word === value);
}

export function arrayOf<T>(check: Check<T>): Check<readonly T[]> {
  return (value): value is readonly T[] => Array.isArray(value) && value.every(check);
}

/** An object that has each named field and passes the field's own check. The types force every field to be named. */
export function shape<T extends object>(fields: { readonly [K in keyof T]-?: Check<T[K]> }): Check<T> {
  const entries = Object.entries<Check<unknown>>(fields);
  return (value): value is T =>
    isObject(value) && entries.every(([name, check]) => Object.hasOwn(value, name) && check(value[name]));
}

/** Whether a value is a message of a known type that passes the type's own check. */
export function checkedByType(checks: Readonly<Record<string, Check<unknown>>>, value: unknown): boolean {
  if (!isObject(value)) return false;
  const type = value["type"];
  return typeof type === "string" && Object.hasOwn(checks, type) && (checks[type]?.(value) ?? false);
}
