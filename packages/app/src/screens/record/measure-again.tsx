import type { Discrepancy } from "@witnessmark/ledger";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { TwoPartRule } from "../../instruments/two-part-rule.tsx";
import { useKeep } from "../../keep/react.ts";
import { faultRule } from "../../walk/fault-entry.ts";

interface MeasureAgainProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
}

/** Its size today, for a fault that the book measures: so that growth is seen. */
export function MeasureAgain({ open, discrepancy }: MeasureAgainProps) {
  const [asking, setAsking] = useState(false);
  const check = discrepancy.check === undefined ? undefined : open.book.checksById.get(discrepancy.check);
  const measure = check?.faults.find(({ id }) => id === discrepancy.fault)?.measure;
  if (measure === undefined) return null;
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        <b>Measure it again</b>
        <span>{measure.of}, to see whether it grows</span>
      </button>
      {asking ? (
        <Form open={open} discrepancy={discrepancy} measure={measure} onClose={() => setAsking(false)} />
      ) : null}
    </>
  );
}

interface FormProps extends MeasureAgainProps {
  readonly measure: Parameters<typeof faultRule>[0];
  readonly onClose: () => void;
}

function Form({ open, discrepancy, measure, onClose }: FormProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const last = discrepancy.measurements.at(-1);
  const { unit } = measure.upTo;
  const [size, setSize] = useState(last?.measured.unit === unit ? last.measured.value : 0);
  const rule = faultRule(measure, size, discrepancy);
  const send = async () => {
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        {
          type: "discrepancy.measured",
          body: { discrepancy: discrepancy.id, measured: { value: size, unit } },
        },
      ]),
    );
    if (kept) onClose();
  };
  return (
    <Popup title={discrepancy.words} onClose={onClose}>
      <div className="popup-body">
        <TwoPartRule
          values={rule.values}
          texts={rule.texts}
          step={rule.step}
          outside={rule.over}
          label={measure.of}
          valueText={`${size} ${unit}`}
          onChange={setSize}
        />
        <label className="field">
          <span>
            {measure.of}, {unit}
          </span>
          <input
            type="number"
            inputMode="decimal"
            min={0}
            step="any"
            value={size}
            onChange={(event) => {
              const typed = event.target.valueAsNumber;
              if (Number.isFinite(typed) && typed >= 0) setSize(typed);
            }}
          />
        </label>
        <p role="status">{rule.says}</p>
        <Trouble words={keeping.trouble} />
        <button
          type="button"
          className="button filled tall full"
          aria-busy={keeping.busy}
          onClick={() => void send()}
        >
          Keep it
        </button>
      </div>
    </Popup>
  );
}
