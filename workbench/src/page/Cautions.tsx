import { cautions } from '@bloomrail/sheets/cautions';

/** The usual cautions, quiet but on every page. */
export function Cautions() {
  return (
    <footer className="foot cautions">
      <p>{cautions.join(' ')}</p>
    </footer>
  );
}
