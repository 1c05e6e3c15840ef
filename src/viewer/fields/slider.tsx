import './slider.css';
import { useEffect, useRef } from 'preact/hooks';
import type { SliderSpan } from './slider-span.ts';

interface SliderProps {
  readonly label: string;
  readonly span: SliderSpan;
  readonly value: number;
  /** the value with its unit, as it is spoken */
  readonly valueText: string;
  /** where Before stands, where that is elsewhere */
  readonly mark?: number | undefined;
  /** called once a frame at most while the value moves */
  readonly onMove: (value: number) => void;
  /** called once when a hand or a key lets go */
  readonly onRelease: () => void;
}

/** A range that previews while it moves and commits when it is let go: one gesture, by hand as by keys. */
export function Slider({ label, span: wanted, value, valueText, mark, onMove, onRelease }: SliderProps) {
  const waiting = useRef<number | undefined>(undefined);
  const frame = useRef(0);
  const hasMoved = useRef(false);
  const isKeyDown = useRef(false);
  const move = useRef(onMove);
  move.current = onMove;
  // The ends hold still under a moving hand, even where they were widened for the value it moves away from.
  const held = useRef(wanted);
  if (!hasMoved.current) held.current = wanted;
  const span = held.current;

  const flush = () => {
    cancelAnimationFrame(frame.current);
    frame.current = 0;
    if (waiting.current === undefined) return;
    const newest = waiting.current;
    waiting.current = undefined;
    hasMoved.current = true;
    move.current(newest);
  };
  const release = () => {
    flush();
    isKeyDown.current = false;
    if (!hasMoved.current) return;
    hasMoved.current = false;
    onRelease();
  };
  useEffect(() => () => cancelAnimationFrame(frame.current), []);

  const shareOf = (at: number) => String((at - span.min) / (span.max - span.min));
  return (
    <div class="slider" style={{ '--at': shareOf(value), ...(mark !== undefined && { '--mark': shareOf(mark) }) }}>
      {mark !== undefined && <i class="mark" aria-hidden="true" />}
      <input
        type="range"
        class="slider-range"
        aria-label={label}
        aria-valuetext={valueText}
        min={span.min}
        max={span.max}
        step={span.step}
        value={value}
        onInput={(event) => {
          waiting.current = Number(event.currentTarget.value);
          frame.current ||= requestAnimationFrame(flush);
        }}
        onChange={() => {
          // Keys send a change at every step; theirs ends when the key comes up.
          if (!isKeyDown.current) release();
        }}
        onKeyDown={() => {
          isKeyDown.current = true;
        }}
        onKeyUp={release}
        onBlur={release}
      />
    </div>
  );
}
