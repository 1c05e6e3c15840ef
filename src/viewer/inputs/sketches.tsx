import type { InputPart } from '../state/display.ts';

/** Each part as a few lines, on a sheet of 30 by 22. */
const LINES: Record<InputPart, string> = {
  core: 'M3 8l7-4h17l-7 4zM3 8v10h17V8M20 18l7-4V4M3 11.3h17M3 14.6h17M7 8v10M11.500 8v10M16 8v10',
  pump: 'M12.500 4.500a7 7 0 1 0 7 7M12.500 4.500H27v5h-7.800M12.500 11.500l4.500-3M12.500 11.500l-5-1.500M12.500 11.500l1 5.200',
  lines: 'M2 6h13a5 5 0 0 1 5 5v9M2 11h9.500a3.500 3.500 0 0 1 3.500 3.500V20M20 6h8M20 11h8M24 4v9',
  exchanger: 'M4 4h22v14H4zM4 7.500h22M4 11h22M4 14.500h22M8.400 4v14M12.800 4v14M17.200 4v14M21.600 4v14',
  tank: 'M6 6h18v13H6zM12 6V2.500h6V6M6 11c3-2 6 2 9 0s6 2 9 0M9 15h4M17 15h4',
  compressor:
    'M10 4.500a6.500 6.500 0 1 0 .01 0zM20 4.500a6.500 6.500 0 1 0 .01 0zM10 6.500v9M15.500 11h9M10 2v2M20 18v2',
  air: 'M12 3.500v9a4.200 4.200 0 1 0 5 0v-9a2.500 2.500 0 0 0-5 0zM14.500 9v6M21 5h5M21 9h5M4 5h4M4 9h4',
  pulls: 'M2 19h4.500l2.500-14 .8 14h4.700l2.500-14 .8 14h4.700l2.500-14 .8 14H28M2 8h26',
  sensor: 'M3 18.500h24M12 18.500V11M18 18.500V11M11 11h8V5.500h-8zM15 5.500V2M15 14v4.500',
};

export function Sketch({ part }: { readonly part: InputPart }) {
  return (
    <svg viewBox="0 0 30 22" aria-hidden="true" focusable="false">
      <path d={LINES[part]} />
    </svg>
  );
}
