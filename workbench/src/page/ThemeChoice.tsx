import { useState } from 'react';

const themes = ['system', 'light', 'dark'] as const;
const sizes = [1, 1.15, 1.3] as const;

/** Light or dark, and larger lettering; kept in this browser. */
export function ThemeChoice() {
  const [theme, setTheme] = useState(stored('theme') ?? 'system');
  const [size, setSize] = useState(stored('larger') ?? '1');
  const choose = (key: string, value: string, set: (value: string) => void) => {
    localStorage.setItem(`bloomrail.${key}`, value);
    set(value);
    applyLooks();
  };
  return (
    <>
      <Choice
        name="Page"
        options={themes}
        value={theme}
        onChoose={(value) => choose('theme', value, setTheme)}
      />
      <Choice
        name="Lettering"
        options={sizes.map(String)}
        value={size}
        onChoose={(value) => choose('larger', value, setSize)}
      />
    </>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly options: readonly string[];
  readonly value: string;
  readonly onChoose: (value: string) => void;
}

function Choice({ name, options, value, onChoose }: ChoiceProps) {
  return (
    <p className="choices">
      <span className="quiet">{name}</span>
      {options.map((option) => (
        <button key={option} type="button" aria-pressed={option === value} onClick={() => onChoose(option)}>
          {option}
        </button>
      ))}
    </p>
  );
}

const stored = (key: string): string | undefined => localStorage.getItem(`bloomrail.${key}`) ?? undefined;

/** Puts the stored looks onto the page; called before the first picture and after each choice. */
export function applyLooks(): void {
  const { dataset, style } = document.documentElement;
  const theme = stored('theme');
  if (theme === 'light' || theme === 'dark') dataset.theme = theme;
  else delete dataset.theme;
  style.setProperty('--larger', stored('larger') ?? '1');
}
