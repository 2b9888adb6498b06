const place = 'bloomrail.letters';

/** Whether single letters act as keys; off for those who speak to their machine or rest a hand on the keys. */
export const lettersOn = (): boolean => localStorage.getItem(place) !== 'off';

export const setLetters = (on: boolean): void => localStorage.setItem(place, on ? 'on' : 'off');
