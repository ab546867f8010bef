import { memo, useEffect, useState } from "react";
import { useKeep } from "../keep/react.ts";
import "./photo-strip.css";

interface PhotoStripProps {
  readonly photos: readonly { readonly sha256: string; readonly recordedAt: string }[];
  readonly about: string;
}

/** The photos that belong to something, small; each opens in full. */
export function PhotoStrip({ photos, about }: PhotoStripProps) {
  if (photos.length === 0) return null;
  return (
    <ul className="photo-strip" aria-label={`Photos of ${about}`}>
      {photos.map((photo, index) => (
        <li key={photo.sha256}>
          <Photo sha256={photo.sha256} name={`Photo ${index + 1} of ${about}`} />
        </li>
      ))}
    </ul>
  );
}

const Photo = memo(function Photo({ sha256, name }: { readonly sha256: string; readonly name: string }) {
  const keep = useKeep();
  const [found, setFound] = useState<{ readonly address: string } | "not-here" | null>(null);
  useEffect(() => {
    let address: string | null = null;
    let left = false;
    keep
      .photo(sha256)
      .then((blob) => {
        if (left) return;
        if (blob === null) {
          setFound("not-here");
          return;
        }
        address = URL.createObjectURL(blob);
        setFound({ address });
      })
      .catch(() => {
        // it is on another phone, or out of reach: the place says so
        if (!left) setFound("not-here");
      });
    return () => {
      left = true;
      if (address !== null) URL.revokeObjectURL(address);
    };
  }, [keep, sha256]);
  if (found === null) return <span className="photo-none" />;
  if (found === "not-here") return <span className="photo-none">Not on this device yet</span>;
  return (
    <a href={found.address} target="_blank" rel="noreferrer">
      <img src={found.address} alt={name} />
    </a>
  );
});
