import { useEffect, useRef, useState } from 'react';
import { lettersOn, setLetters } from './letters.ts';
import { ThemeChoice } from './ThemeChoice.tsx';

const keys: readonly (readonly [string, string])[] = [
  ['← →', 'station before, after'],
  ['Home End', 'furnace, cutting and bundling'],
  ['Enter, Esc', 'open the station; back to the line, or leave a field unchanged'],
  ['1 … 5', 'views of the station'],
  ['s l c f d', 'to settings, limits, laws for comparison, findings, downstream'],
  ['n, Shift n', 'next, last finding anywhere on the line'],
  ['↑ ↓, Shift, Alt', 'move the focused setting by a step, ten, a tenth'],
  ['Ctrl Z, Ctrl Shift Z', 'undo, redo'],
  ['.', 'compute now; while computing: stop'],
  ['b, held', 'show the state before the last move'],
  ['t', 'table of this picture'],
  ['p', 'print this sheet'],
  ['?', 'this list'],
];

/** The list of keys, and the one choice a person has about the looks of the page. */
export function KeysList({ open, onClose }: { open: boolean; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <dialog ref={dialog} onClose={onClose} aria-label="Keys">
      <h2>Keys</h2>
      <dl>
        {keys.map(([key, does]) => (
          <div key={key} style={{ display: 'contents' }}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <LettersChoice />
      <ThemeChoice />
      <p style={{ marginTop: 12 }}>
        <button type="button" className="act" onClick={onClose}>
          Close
        </button>
      </p>
    </dialog>
  );
}

/** Arrows, Enter, Escape and keys with Ctrl always work; single characters can be switched off. */
function LettersChoice() {
  const [on, setOn] = useState(lettersOn);
  return (
    <p>
      <label>
        <input
          type="checkbox"
          checked={on}
          onChange={({ target }) => {
            setLetters(target.checked);
            setOn(target.checked);
          }}
        />{' '}
        single letters, digits and signs act as keys
      </label>
    </p>
  );
}
