/** English plural of a name, of the word before its first comma: `top rail, front` and two of them: `top rails, front`. */
export function plural(name: string): string {
  const [head = '', ...rest] = name.split(',');
  const many = /(l|r)f$/.test(head)
    ? `${head.slice(0, -1)}ves`
    : /(s|x|z|ch|sh)$/.test(head)
      ? `${head}es`
      : /[^aeiou]y$/.test(head)
        ? `${head.slice(0, -1)}ies`
        : `${head}s`;
  return [head === '' ? head : many, ...rest].join(',');
}
/** A number with its noun: `1 place`, `34 places`. */
export const counted = (n: number, noun: string): string => `${n} ${n === 1 ? noun : plural(noun)}`;
