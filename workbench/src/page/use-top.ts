import { useEffect, useRef } from 'react';

/** Every place is read from its top, wherever the last one was scrolled to. */
export function useTop(place: string): void {
  const shown = useRef(place);
  useEffect(() => {
    if (shown.current !== place) scrollTo(0, 0);
    shown.current = place;
  }, [place]);
}
