/** The usual cautions, quiet but on every page. */
export function Cautions() {
  return (
    <footer className="foot cautions">
      <p>
        Hot metal, pinch points at rolls and rollers, water under pressure, loads on hooks, bent rails that
        spring back: keep clear and lock out before work. A computed setting is no permission; local codes and
        licensed practice decide.
      </p>
    </footer>
  );
}
