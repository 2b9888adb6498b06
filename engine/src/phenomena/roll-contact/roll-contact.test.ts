import fc from 'fast-check';
import { expect, test } from 'vitest';
import { must } from '../../outcome/result.ts';
import { heatingLaw } from '../../steel/heating.ts';
import { conductFor } from '../conduction/conduct.ts';
import { conductor } from '../conduction/conductor.ts';
import { plateMesh } from '../conduction/plate-mesh.fixture.ts';
import { contactHeat, interfaceTemperature, perfectContactHeat, rollContact } from './roll-contact.ts';

test.each([
  // h W/m²K, then kJ/m² at 0.02, 0.05, 0.10 and 0.20 s: steel 1050 °C, roll 60 °C, effusivities 11 800 and 12 980
  [10_000, [169, 387, 708, 1261]],
  [20_000, [292, 630, 1089, 1822]],
  [40_000, [458, 911, 1475, 2317]],
])('a roll that touches with %i W/m²K takes the tabulated heat', (h, table) => {
  [0.02, 0.05, 0.1, 0.2].forEach((time, k) => {
    expect(Math.abs((contactHeat(h, time) * 990) / 1e3 - table[k])).toBeLessThan(0.6);
  });
});

test('perfect contact takes 2183 kJ/m² in a tenth of a second, at 531 °C between the two', () => {
  expect(Math.abs((perfectContactHeat(0.1) * 990) / 1e3 - 2183)).toBeLessThan(1);
  expect(Math.abs(interfaceTemperature(1050, 60) - 531)).toBeLessThan(0.5);
});

test('a better contact takes more, and never more than a perfect one', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 100, max: 3e5, noNaN: true }),
      fc.double({ min: 1e-4, max: 1, noNaN: true }),
      (h, t) => {
        const heat = contactHeat(h, t);
        expect(heat).toBeGreaterThan(0);
        expect(heat).toBeLessThan(contactHeat(1.1 * h, t));
        expect(heat).toBeLessThan(perfectContactHeat(t));
        expect(heat).toBeLessThanOrEqual(h * t * (1 + 1e-9));
      },
    ),
  );
});

test('a contact too short to cool the skin takes h t to the last digits', () => {
  expect(contactHeat(1000, 1e-9) / (1000 * 1e-9)).toBeCloseTo(1, 5);
  expect(contactHeat(1000, 0)).toBe(0);
});

test('the touched edges give exactly the heat of the contact, the others none', () => {
  const plate = conductor(plateMesh(0.1, 0.05, 10, 5));
  const before = new Float64Array(plate.areas.length).fill(1050);
  const touched = Float64Array.from({ length: plate.skin.edges }, (_, e) => (plate.skin.ny[e] > 0.5 ? 1 : 0));
  const contact = { conductance: 20_000, rollTemperature: 60, duration: 0.05 };
  const surface = [rollContact(plate.skin, before, touched, contact)];
  const law = heatingLaw(steel);
  const after = must(conductFor(plate, { massPerMetre: 38, law, surface }, { temperature: before }, 0.05, 2));
  expect(after.gained.rolls / (-0.1 * 990 * contactHeat(20_000, 0.05))).toBeCloseTo(1, 12);
  expect(after.temperature[0]).toBeGreaterThan(1049.9);
});

const steel = {
  name: 'eutectoid',
  standard: 'none',
  composition: { C: 0.75, Si: 0.3, Mn: 1, P: 0, S: 0, Cr: 0, V: 0 },
};
