import { type RefCallback, useState } from "react";

/** Elements by name, for what is written into them. */
export interface Parts {
  ref(name: string): RefCallback<Element>;
  /** Another text in it; a text is all that it holds. */
  say(name: string, text: string): void;
  /** Another value of one of its attributes. */
  put(name: string, attribute: string, value: string): void;
}

/** The same for the life of the component. */
export function useParts(): Parts {
  return useState(newParts)[0];
}

function newParts(): Parts {
  const found = new Map<string, Element>();
  const refs = new Map<string, RefCallback<Element>>();
  const refOf = (name: string): RefCallback<Element> => {
    const known = refs.get(name);
    if (known !== undefined) return known;
    const ref: RefCallback<Element> = (element) => {
      if (element === null) found.delete(name);
      else found.set(name, element);
    };
    refs.set(name, ref);
    return ref;
  };
  return {
    ref: refOf,
    say(name, text) {
      const element = found.get(name);
      if (element === undefined) return;
      const { firstChild } = element;
      if (!(firstChild instanceof Text)) element.textContent = text;
      else if (firstChild.data !== text) firstChild.data = text;
    },
    put(name, attribute, value) {
      const element = found.get(name);
      if (element !== undefined && element.getAttribute(attribute) !== value)
        element.setAttribute(attribute, value);
    },
  };
}
