/** What a number format shows. */

/** A format's code without its literals, colours and conditions. */
const bareCode = (code: string): string => code.replace(/"[^"]*"|\\.|\[[^\]]*\]|_.|\*./g, '');

export const showsDate = (code: string): boolean =>
  /[dy]|m{3,}/i.test(bareCode(code)) && !/general/i.test(code);
