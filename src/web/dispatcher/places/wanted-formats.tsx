import type { Chain, WantedFormat } from '../../../../shared/contract/chain.ts';
import { dynamicRanges } from '../../../../shared/contract/chain-names.ts';
import { dynamicRangeNames, formatFigures } from '../../../../shared/message/figures.ts';
import { SelectField } from '../../parts/field.tsx';
import { number } from '../../words/times.ts';
import { placeWords } from './words.ts';

type Range = (typeof dynamicRanges)[number];

/** The wanted pictures, each with the dynamic range that it is wanted in; the rest of them stays as it is. */
export function WantedFormats({ chain, onChange }: { chain: Chain; onChange: (chain: Chain) => void }) {
  const t = placeWords();
  if (chain.wantedFormats.length === 0) return null;
  const figures = { decimal: (figure: string) => number(Number(figure), 3), bit: t.bit };
  const choose = (at: number, dynamicRange: Range): void =>
    onChange({
      ...chain,
      wantedFormats: chain.wantedFormats.map((format, index) =>
        index === at ? inRange(format, dynamicRange) : format,
      ),
    });
  return (
    <>
      <h2>{t.wanted}</h2>
      <p class="soft">{t.formats(chain.wantedFormats.length)}</p>
      <div class="three">
        {chain.wantedFormats.map((format, at) => {
          const { dynamicRange, ...picture } = format;
          return (
            <SelectField
              key={at}
              label={t.rangeOf(formatFigures(picture, figures))}
              options={dynamicRanges.map((value) => ({ value, label: dynamicRangeNames[value] }))}
              value={dynamicRange ?? 'sdr'}
              onChoose={(range) => choose(at, range)}
            />
          );
        })}
      </div>
    </>
  );
}

/** SDR is what goes without saying, and is left out. */
function inRange({ dynamicRange: _, ...format }: WantedFormat, range: Range): WantedFormat {
  return range === 'sdr' ? format : { ...format, dynamicRange: range };
}
