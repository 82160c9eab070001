/** Which part of the cutting table is seen: moved and scaled by wheel, keys and fingers. */
import { type RefObject, useCallback, useEffect, useRef, useState } from 'react';

/** Offset in px of the table's corner, and px for each mm. */
export interface HandView {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

const minScale = 0.02;
const maxScale = 4;
const marginPx = 16;

export function zoomedAt(view: HandView, ratio: number, atX: number, atY: number): HandView {
  const scale = Math.min(maxScale, Math.max(minScale, view.scale * ratio));
  const by = scale / view.scale;
  return { scale, x: atX - (atX - view.x) * by, y: atY - (atY - view.y) * by };
}

export function panned(view: HandView, byX: number, byY: number): HandView {
  return { ...view, x: view.x + byX, y: view.y + byY };
}

/** The whole table in sight. */
export function fittingView(
  room: { width: number; height: number },
  table: { width: number; height: number },
) {
  const scale = Math.min(
    maxScale,
    Math.max(
      minScale,
      Math.min((room.width - 2 * marginPx) / table.width, (room.height - 2 * marginPx) / table.height),
    ),
  );
  return { scale, x: marginPx, y: Math.max(marginPx, (room.height - table.height * scale) / 2) };
}

/** The width of the cloth fills the sheet, and its start is in sight. */
export function startingView(
  room: { width: number; height: number },
  table: { width: number; height: number },
): HandView {
  const scale = Math.min(maxScale, Math.max(minScale, (room.height - 4 * marginPx) / table.height));
  return { scale, x: marginPx, y: 2 * marginPx };
}

/** Moved just so far that a box of the table, mm, is in sight; a larger one shows its start. */
export function revealing(
  view: HandView,
  room: { width: number; height: number },
  box: { x: number; y: number; width: number; height: number },
): HandView {
  const inSight = (from: number, extent: number, roomPx: number): number => {
    if (from < marginPx) return marginPx - from;
    const past = from + extent - (roomPx - marginPx);
    return past > 0 ? Math.max(-past, marginPx - from) : 0;
  };
  return panned(
    view,
    inSight(view.x + box.x * view.scale, box.width * view.scale, room.width),
    inSight(view.y + box.y * view.scale, box.height * view.scale, room.height),
  );
}

/** Wheel and two fingers on the sheet. One finger or the pointer on bare cloth is for the drawing to handle. */
export function useHandView(
  sheet: RefObject<SVGSVGElement | null>,
  table: { width: number; height: number },
) {
  const [view, setView] = useState<HandView>({ x: marginPx, y: marginPx, scale: 0.2 });
  const fingers = useRef(new Map<number, { x: number; y: number }>());
  const tableNow = useRef(table);
  tableNow.current = table;

  const fit = useCallback(() => {
    const box = sheet.current?.getBoundingClientRect();
    if (box && box.width > 0) setView(fittingView(box, tableNow.current));
  }, [sheet]);
  useEffect(() => {
    const box = sheet.current?.getBoundingClientRect();
    if (box && box.width > 0) setView(startingView(box, tableNow.current));
  }, [sheet]);
  const reveal = useCallback(
    (box: { x: number; y: number; width: number; height: number }) => {
      const room = sheet.current?.getBoundingClientRect();
      if (room) setView((now) => revealing(now, room, box));
    },
    [sheet],
  );

  // React's own wheel listeners cannot keep the page from scrolling.
  useEffect(() => {
    const element = sheet.current;
    if (!element) return;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const isPan = event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY);
      setView((now) =>
        isPan
          ? panned(now, -(event.deltaX || event.deltaY), 0)
          : zoomedAt(
              now,
              Math.exp(-event.deltaY * 0.0015),
              event.clientX - box.left,
              event.clientY - box.top,
            ),
      );
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [sheet]);

  /** Two fingers move and scale; true while they do. */
  const fingerMoved = useCallback(
    (id: number, x: number, y: number): boolean => {
      const known = fingers.current;
      const before = known.get(id);
      if (!before) return false;
      const other = [...known].find(([otherId]) => otherId !== id)?.[1];
      known.set(id, { x, y });
      if (!other) return false;
      const box = sheet.current?.getBoundingClientRect();
      if (!box) return true;
      const apart = (one: { x: number; y: number }) => Math.hypot(one.x - other.x, one.y - other.y);
      const ratio = apart({ x, y }) / Math.max(1, apart(before));
      const middle = { x: (x + other.x) / 2 - box.left, y: (y + other.y) / 2 - box.top };
      setView((now) =>
        zoomedAt(panned(now, (x - before.x) / 2, (y - before.y) / 2), ratio, middle.x, middle.y),
      );
      return true;
    },
    [sheet],
  );
  const fingerDown = useCallback((id: number, x: number, y: number): number => {
    fingers.current.set(id, { x, y });
    return fingers.current.size;
  }, []);
  const fingerUp = useCallback((id: number) => void fingers.current.delete(id), []);

  return { view, setView, fit, reveal, fingerDown, fingerMoved, fingerUp };
}
