import { useLayoutEffect, useRef, useState } from 'react';

/** Width of an element, followed while the page is resized; drawings are laid out to it. */
export function useWidth<E extends HTMLElement>(start = 1000) {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(start);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    setWidth(element.clientWidth);
    const watch = new ResizeObserver(() => setWidth(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return { ref, width };
}
