import { useSignal } from '@preact/signals';
import { CSV_FLAVOURS, type CsvFlavour, csvOf } from '../files/csv.ts';
import { fileName, type Picture, pictures, saveFile } from '../files/export.ts';
import type { PageProps } from '../page.tsx';
import type { Car, CarRun } from '../state/cars.ts';
import { Popover } from './popover.tsx';

const FLAVOUR_NAMES: Record<CsvFlavour, string> = {
  plain: 'Commas, decimal points',
  'for spreadsheets': 'Semicolons, decimal commas: for spreadsheets',
};

/** What can be taken away from the page: the numbers of a run, and its pictures. */
export function ExportMenu({ session }: PageProps) {
  const flavour = useSignal<CsvFlavour>('plain');
  const problem = useSignal('');
  const [before, after] = [session.before.value, session.after.value];
  const takePicture = async ({ name, make }: Picture) => {
    problem.value = '';
    try {
      saveFile(fileName([session.inHand.value?.scenario.values.name ?? '', name], 'png'), await make());
    } catch (error) {
      problem.value = `No picture: ${error instanceof Error ? error.message : String(error)}`;
    }
  };
  return (
    <Popover title="Export">
      {() => (
        <>
          <fieldset>
            <legend>Table of the run, CSV</legend>
            {CSV_FLAVOURS.map((each) => (
              <label key={each} class="radio">
                <input
                  type="radio"
                  name="csv-flavour"
                  checked={flavour.value === each}
                  onChange={() => {
                    flavour.value = each;
                  }}
                />
                {FLAVOUR_NAMES[each]}
              </label>
            ))}
            <p class="acts">
              <CsvButton
                who={after ? 'Before: ' : ''}
                car={before}
                run={session.beforeRun.value}
                flavour={flavour.value}
              />
              {after && <CsvButton who="After: " car={after} run={session.afterRun.value} flavour={flavour.value} />}
            </p>
          </fieldset>
          {pictures.value.length > 0 && (
            <fieldset>
              <legend>Picture, PNG</legend>
              <p class="acts">
                {pictures.value.map((picture) => (
                  <button type="button" key={picture.name} onClick={() => takePicture(picture)}>
                    {picture.name}
                  </button>
                ))}
              </p>
            </fieldset>
          )}
          {problem.value !== '' && <p role="alert">{problem.value}</p>}
        </>
      )}
    </Popover>
  );
}

interface CsvButtonProps {
  readonly who: string;
  readonly car: Car | undefined;
  readonly run: CarRun;
  readonly flavour: CsvFlavour;
}

function CsvButton({ who, car, run, flavour }: CsvButtonProps) {
  if (car === undefined) return <span class="small">Nothing is open.</span>;
  const { series } = run;
  const isOfThisCar = series !== undefined && run.of === car;
  const isPart = run.kind !== 'solved';
  return (
    <button
      type="button"
      disabled={!isOfThisCar}
      onClick={() => {
        if (series === undefined) return;
        const words = [car.scenario.values.name, car.label, ...(isPart ? ['part of the run'] : [])];
        saveFile(fileName(words, 'csv'), new Blob([csvOf(series, flavour)], { type: 'text/csv;charset=utf-8' }));
      }}
    >
      {who}
      {car.label}
      {isOfThisCar && isPart && ', as far as it goes'}
    </button>
  );
}
