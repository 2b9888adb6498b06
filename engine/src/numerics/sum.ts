/** Sum of a row; 0 of an empty one. */
export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
