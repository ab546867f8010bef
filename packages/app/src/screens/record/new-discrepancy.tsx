import { jascTitle } from "@witnessmark/book";
import { newId } from "@witnessmark/ledger";
import { type FormEvent, useRef, useState } from "react";
import { AircraftDrawing, type PlaceOnView } from "../../drawing/aircraft-drawing.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { Draft } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { go } from "../../routes/use-route.ts";
import { PhotoButton } from "../walk/photo-button.tsx";

/** Metres in the book's axes: aft, right. */
interface Placed {
  readonly x_m: number;
  readonly y_m: number;
}

/** Writes down a discrepancy that no check of a walk found: where it is on the aircraft, what, with photos. */
export function NewDiscrepancy({ open }: { readonly open: OpenAircraft }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [words, setWords] = useState("");
  const [point, setPoint] = useState("");
  const [placed, setPlaced] = useState<Placed | null>(null);
  const [equipment, setEquipment] = useState("");
  const [photos, setPhotos] = useState<readonly File[]>([]);
  const [asked, setAsked] = useState(false);
  const [id] = useState(newId);
  const raised = useRef(false);
  const said = words.trim();
  const piece = open.book.equipment.find((each) => each.id === equipment);
  const place = (at: Placed) => {
    setPlaced(at);
    setPoint(nearestPoint(open, at));
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (said === "") return;
    const kept = await keeping.keep(async () => {
      // tried once more after a photo that was none: what is written down already is not written down again
      if (!raised.current) {
        await keep.append(
          open.registration,
          draftsOf({ open, id, said, point, placed, equipment, jasc: piece?.jasc }),
        );
        raised.current = true;
      }
      for (const photo of photos)
        await keep.attachPhoto(open.registration, { kind: "discrepancy", id }, photo);
    });
    if (kept) go({ at: "discrepancy", registration: open.registration, discrepancy: id }, "replace");
  };
  return (
    <form className="new-discrepancy" onSubmit={(event) => void send(event)} noValidate>
      <h2>What is not as the book says?</h2>
      <PlacePlan open={open} placed={placed} point={point} onPlace={place} />
      <label className="field">
        <span>Where, by the nearest point</span>
        <select
          value={point}
          onChange={(event) => {
            setPoint(event.target.value);
            setPlaced(null);
          }}
        >
          <option value="">Not said</option>
          {[...open.book.areas.values()].map((area) => (
            <optgroup key={area.id} label={area.name}>
              {[...open.book.points.values()]
                .filter((each) => each.area === area.id)
                .map((each) => (
                  <option key={each.id} value={each.id}>
                    {each.name}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
      <label className="field">
        <span>Equipment of the book</span>
        <select value={equipment} onChange={(event) => setEquipment(event.target.value)}>
          <option value="">None of the list</option>
          {open.book.equipment.map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      {piece === undefined ? null : (
        <p className="record-small">
          System {piece.jasc}, {jascTitle(piece.jasc) ?? "not in the table"}
        </p>
      )}
      <label className="field">
        <span>What is not right</span>
        <textarea value={words} onChange={(event) => setWords(event.target.value)} maxLength={1000} />
      </label>
      {asked && said === "" ? (
        <p className="trouble" role="alert">
          Write what is not right first; a few words do.
        </p>
      ) : null}
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <div className="answers two">
        <PhotoButton
          label={photos.length === 0 ? "Photo" : `Photos: ${photos.length}`}
          onPhoto={(file) => setPhotos([...photos, file])}
        />
        <button type="submit" className="filled" aria-busy={keeping.busy}>
          Write it down
        </button>
      </div>
    </form>
  );
}

interface Said {
  readonly open: OpenAircraft;
  readonly id: string;
  readonly said: string;
  readonly point: string;
  readonly placed: Placed | null;
  readonly equipment: string;
  readonly jasc: string | undefined;
}

function draftsOf({ open, id, said, point, placed, equipment, jasc }: Said): readonly Draft[] {
  const height_m = open.book.points.get(point)?.place[2] ?? 0;
  return [
    {
      type: "discrepancy.raised",
      body: {
        discrepancy: id,
        words: said,
        ...(point === "" ? {} : { point }),
        ...(jasc === undefined ? {} : { jasc }),
      },
    },
    ...(placed === null
      ? []
      : [
          {
            type: "discrepancy.placed" as const,
            body: {
              discrepancy: id,
              place: { ...placed, z_m: height_m },
              ...(point === "" ? {} : { point }),
            },
          },
        ]),
    ...(equipment === ""
      ? []
      : [
          {
            type: "discrepancy.assessed" as const,
            body: { discrepancy: id, words: "Named when it was written down", equipment },
          },
        ]),
  ];
}

function nearestPoint({ book }: OpenAircraft, at: Placed): string {
  let best = "";
  let least = Number.POSITIVE_INFINITY;
  for (const { id, place } of book.points.values()) {
    const away = Math.hypot(place[0] - at.x_m, place[1] - at.y_m);
    if (away < least) {
      least = away;
      best = id;
    }
  }
  return best;
}

interface PlacePlanProps {
  readonly open: OpenAircraft;
  readonly placed: Placed | null;
  readonly point: string;
  readonly onPlace: (at: Placed) => void;
}

const MARK_px = 26;

/** The aircraft from above: a tap says where. The list of points under it says the same to who cannot tap a drawing. */
function PlacePlan({ open, placed, point, onPlace }: PlacePlanProps) {
  const { book } = open;
  const known = book.points.get(point)?.place;
  const at = placed ?? (known === undefined ? null : { x_m: known[0], y_m: known[1] });
  const place = ({ x_m = 0, y_m = 0 }: PlaceOnView) => onPlace({ x_m, y_m });
  return (
    <div className="place-plan">
      <AircraftDrawing
        geometry={book.geometry}
        label={`${book.aircraft.type} from above: tap it where it is`}
        marks={
          at === null ? [] : [{ id: "it", name: "Where it is", place: [at.x_m, at.y_m, 0], status: "stop" }]
        }
        mark_px={MARK_px}
        selected="it"
        detail={1}
        tools="folded"
        onPlace={place}
        onMove={(_, to, done) => (done ? place(to) : undefined)}
      />
      {at === null ? <p>Tap the drawing where it is</p> : null}
    </div>
  );
}
