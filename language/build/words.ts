/** A word with its article: "a panel", "an evse". */
export const article = (word: string): string => `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
