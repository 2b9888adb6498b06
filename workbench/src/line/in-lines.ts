/** A text in at most `most` lines of `letters` each, broken between words; what does not fit ends in '…'. */
export function inLines(text: string, letters: number, most: number): string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1];
    if (last === '' || last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = last ? `${last} ${word}` : word;
    else if (lines.length < most) lines.push(word);
    else {
      lines[most - 1] = `${last.slice(0, letters - 2).trimEnd()} …`;
      break;
    }
  }
  return lines;
}
