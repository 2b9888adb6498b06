/**
 * A text in at most `most` lines of `letters` each, broken between words but never between a number and its unit;
 * what does not fit ends in '…'.
 */
export function inLines(text: string, letters: number, most: number): string[] {
  const lines = [''];
  for (const word of text.replace(unitAfterNumber, '$1\u00a0').split(' ')) {
    const last = lines[lines.length - 1];
    if (last === '' || last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = last ? `${last} ${word}` : word;
    else if (lines.length < most) lines.push(word);
    else {
      lines[most - 1] = `${cut(last, letters - 2)} …`;
      break;
    }
  }
  return lines;
}

const unitAfterNumber = /(\d) (?=\S{1,5}(?:[\s,.;:]|$))/g;

function cut(line: string, letters: number): string {
  if (line.length <= letters) return line;
  const end = line.lastIndexOf(' ', letters);
  return line.slice(0, end > 0 ? end : letters);
}
