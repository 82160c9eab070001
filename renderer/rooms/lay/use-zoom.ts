/** Scale of the drawing of a lay. */
import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';

/** A good height for the cloth: near half of the window, which leaves room for the words above it. */
function defaultHeightPx(): number {
  return Math.max(300, Math.min(560, window.innerHeight * 0.44));
}

const maxPxPerMm = 1.5;
/** Beside the drawing: the sheet's own edge and the figure at the last cut. */
const besidePx = 108;

/** Scale of the drawing: at first the cloth's width at a good height. */
export function useZoom(
  sheet: RefObject<HTMLElement | null>,
  lengthMm: number,
  widthMm: number,
  shown: string,
) {
  const [roomPx, setRoomPx] = useState(1000);
  const [chosen, setChosen] = useState<number | null>(null);
  const centre = useRef(0);
  useEffect(() => {
    const element = sheet.current;
    if (!element) return;
    const watch = new ResizeObserver(() => setRoomPx(element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, [sheet]);
  const fitPxPerMm = Math.max(0.02, (roomPx - besidePx) / lengthMm);
  const usual = defaultHeightPx() / widthMm;
  const pxPerMm = chosen ?? usual;
  // Another lay is looked at from its start, at its own scale.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is shown decides.
  useLayoutEffect(() => {
    setChosen(null);
    if (sheet.current) sheet.current.scrollLeft = 0;
  }, [sheet, shown]);
  // What was in the middle of the sheet stays there.
  useLayoutEffect(() => {
    const element = sheet.current;
    if (element && chosen !== null) element.scrollLeft = centre.current * pxPerMm - element.clientWidth / 2;
  }, [sheet, chosen, pxPerMm]);
  return {
    pxPerMm,
    zoom: (ratio: number) => {
      const element = sheet.current;
      if (element) centre.current = (element.scrollLeft + element.clientWidth / 2) / pxPerMm;
      setChosen(Math.min(maxPxPerMm, Math.max(Math.min(fitPxPerMm, usual), pxPerMm * ratio)));
    },
    fit: () => setChosen(Math.min(maxPxPerMm, fitPxPerMm)),
  };
}
