/** First letter large, as a name at the head of a row. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
