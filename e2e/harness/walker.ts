import type { Book } from "@witnessmark/book";
import type { Locator, Page } from "playwright-core";
import { firstOfDay, type OnCard } from "./book.ts";
import { PATIENCE_ms, until } from "./patience.ts";
import type { PictureFile } from "./picture-file.ts";
import { goodReading, type ToType } from "./readings.ts";
import { untilKept } from "./until-kept.ts";

/**
 * The Walk screen, by what a person sees and taps on it. Every selector and every word of that screen that a test
 * needs is here.
 */
export class Walker {
  readonly page: Page;
  readonly book: Book;
  /** Handed over wherever a check asks for a picture. */
  readonly picture: PictureFile;

  constructor(page: Page, book: Book, picture: PictureFile) {
    this.page = page;
    this.book = book;
    this.picture = picture;
  }

  get card(): Locator {
    return this.page.getByRole("region", { name: "The check in hand" });
  }

  /** What the app says once it has kept something. */
  get strip(): Locator {
    return this.page.getByRole("status").filter({ hasText: /Kept \d\d:\d\d\./ });
  }

  get yes(): Locator {
    return this.card.getByRole("button", { name: "As it should be" });
  }

  get no(): Locator {
    return this.card.getByRole("button", { name: "Not right" });
  }

  get could(): Locator {
    return this.card.getByRole("button", { name: "Could not check" });
  }

  get why(): Locator {
    return this.card.getByRole("button", { name: "Why", exact: true });
  }

  get undo(): Locator {
    return this.page.getByRole("button", { name: "Undo" }).first();
  }

  get more(): Locator {
    return this.page
      .getByRole("button", { name: "More", exact: true })
      .and(this.page.locator("[aria-haspopup]"));
  }

  get trouble(): Locator {
    return this.page.getByRole("alert");
  }

  /** The verdict over the answers: of the reading in hand, or of what an answer will mean. */
  get verdict(): Locator {
    return this.card.getByRole("status").last();
  }

  get whatIsLeft(): Locator {
    return this.page.getByRole("link", { name: /what is left$/ });
  }

  get readingButton(): Locator {
    return this.card.getByRole("button", { name: /type it$/i });
  }

  /** The dialog in which a figure is typed. */
  get figure(): { readonly [part in "dialog" | "field" | "set" | "said"]: Locator } {
    const dialog = this.page.getByRole("dialog");
    return {
      dialog,
      field: dialog.getByRole("textbox"),
      set: dialog.getByRole("button", { name: "Set" }),
      said: dialog.getByRole("status"),
    };
  }

  /** What the figure of the reading in hand says. */
  async readingSaid(): Promise<string> {
    return (await this.readingButton.textContent()) ?? "";
  }

  get temperatureButton(): Locator {
    return this.card.getByRole("button", { name: / at [–−\d]/ });
  }

  get finishButton(): Locator {
    return this.card.getByRole("button", { name: /^Finish/ });
  }

  get answerKeep(): Locator {
    return this.card.getByRole("button", { name: /^Keep it/ });
  }

  get pieces(): Locator {
    return this.card.getByRole("button", { name: /^\d+ pieces? off, / });
  }

  /** The rule on which a reading slides. */
  get slider(): Locator {
    return this.card.getByRole("slider");
  }

  /** One step up in the size of a fault. */
  get sizeMore(): Locator {
    return this.card.getByRole("button", { name: "More", exact: true });
  }

  /** From a question that follows an answer to the check itself. */
  get back(): Locator {
    return this.card.getByRole("button", { name: "Back", exact: true });
  }

  /** What is not right, in a person's own words. */
  get words(): Locator {
    return this.card.getByLabel(/in your words/i);
  }

  get noPhotoWhy(): Locator {
    return this.card.getByRole("textbox", { name: "No photo? Say why" });
  }

  get photoInput(): Locator {
    return this.card.getByLabel(/^(Photo|Photos: \d+|Another photo)$/);
  }

  async startFirstOfDay(): Promise<void> {
    await this.page.getByRole("button", { name: /^First of the day/ }).tap();
    await this.card.waitFor();
  }

  /** How many steps are left, and of how many. */
  async left(): Promise<{ readonly left: number; readonly of: number }> {
    const said = (await this.whatIsLeft.getAttribute("aria-label")) ?? "";
    const [, left, of] = /^(\d+) left of (\d+)/.exec(said) ?? [];
    if (left === undefined || of === undefined) {
      throw new Error(`walker: expected "N left of M", found "${said}"`);
    }
    return { left: Number(left), of: Number(of) };
  }

  /** Waits until so many steps are left: what other phones say arrives by itself. */
  async leftBecomes(left: number): Promise<void> {
    await this.page
      .getByRole("link", { name: new RegExp(`^${left} left of`) })
      .waitFor({ timeout: PATIENCE_ms });
  }

  async onCard(): Promise<OnCard> {
    return this.card.evaluate((card) => ({
      place: card.querySelector("p b")?.textContent ?? "",
      title: card.querySelector("h2")?.textContent ?? "",
    }));
  }

  /** The step of the book that is in hand; the card's words name exactly one. */
  async inHand(): Promise<ReturnType<typeof firstOfDay>[number]> {
    const { place, title } = await this.onCard();
    const found = firstOfDay(this.book).filter((each) => each.place === place && each.title === title);
    const [step] = found;
    if (step === undefined || found.length !== 1) {
      throw new Error(
        `walker: expected one step of the book for "${place}: ${title}", found ${found.length}`,
      );
    }
    return step;
  }

  /** Goes to a step by its address, as a tap on its point or its name in a list does. */
  async goTo(
    step: OnCard & { readonly step: { readonly kind: string; readonly id: string } },
  ): Promise<void> {
    const { kind, id } = step.step;
    await this.page.evaluate(
      (address) => {
        window.location.hash = address;
      },
      `#/${this.book.aircraft.registration}/walk/${kind}/${encodeURIComponent(id)}`,
    );
    await until(
      `the card of ${step.place}: ${step.title}`,
      () => this.onCard(),
      (card) => card.place === step.place && card.title === step.title,
    );
  }

  /** Goes to the step of the book with this id. */
  async goToId(id: string): Promise<void> {
    const step = firstOfDay(this.book).find((each) => each.step.id === id);
    if (step === undefined) throw new Error(`walker: expected the step ${id} in the book`);
    await this.goTo(step);
  }

  /** Taps, and waits until the app says that it is kept and has taken up another step. */
  async kept(button: Locator, words: string): Promise<void> {
    const said = words.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
    const told = this.page.evaluate(untilKept, {
      said,
      before: await this.onCard(),
      patience_ms: PATIENCE_ms,
    });
    // when the tap itself fails, that is what is told
    told.catch(() => undefined);
    await button.tap();
    await told;
  }

  private async otherCard(before: OnCard): Promise<void> {
    await until(
      `another card than ${before.place}: ${before.title}`,
      () => this.onCard(),
      (card) => card.place !== before.place || card.title !== before.title,
    );
  }

  /**
   * Does what the card in hand asks, and all is as it should be: reads, counts off, takes the picture.
   *
   * @param look what is done before the answer is tapped
   */
  async doStep(look: () => Promise<void> = async () => {}): Promise<string> {
    const { step, place } = await this.inHand();
    if (step.kind === "ground-gear") {
      await look();
      await this.countOff();
      return step.id;
    }
    if (step.check.reading !== undefined) await this.read(goodReading(this.book, step.check));
    await look();
    if (step.check.evidence === "photo" || (await this.asksByChance())) await this.answerWithPicture();
    else await this.kept(this.yes, place);
    return step.id;
  }

  /** One tap. @param stowedIn where the pieces went; the first place that the book names when left out */
  async countOff(stowedIn?: string): Promise<void> {
    const { place } = await this.onCard();
    const button =
      stowedIn === undefined
        ? this.pieces
        : this.card.getByRole("button", { name: new RegExp(`${stowedIn}$`, "i") });
    await this.kept(button, place);
  }

  /** Types a reading, and the temperature that its limit moves with when this walk has not said it yet. */
  async read({ value, temperature_degC }: ToType): Promise<void> {
    if (temperature_degC !== null && (await this.temperatureButton.textContent())?.includes("–")) {
      await this.temperatureButton.tap();
      await this.typeFigure(temperature_degC);
    }
    await this.readingButton.tap();
    await this.typeFigure(value);
  }

  /** Types into the figure that was opened, and sets it. */
  async typeFigure(text: string): Promise<void> {
    const { dialog, field, set } = this.figure;
    await field.fill(text);
    await set.tap();
    await dialog.waitFor({ state: "hidden" });
  }

  /** Whether this walk has drawn the check in hand to be shown. */
  asksByChance(): Promise<boolean> {
    return this.card.getByText("This walk asks for a photo here").isVisible();
  }

  async answerWithPicture(): Promise<void> {
    const { place } = await this.onCard();
    await this.yes.tap();
    await this.card.getByRole("heading", { name: /^(The book|This walk) asks for a photo$/ }).waitFor();
    await this.photoInput.setInputFiles(this.picture);
    await this.card.getByText("Photo taken").waitFor();
    await this.kept(this.yes, place);
  }

  /** Says that it is not right, in words and perhaps with a picture. */
  async notRight(words: string, withPicture: boolean): Promise<void> {
    const { place } = await this.onCard();
    await this.no.tap();
    await this.card.getByRole("heading", { name: "What is not right?" }).waitFor();
    await this.words.fill(words);
    if (withPicture) {
      await this.photoInput.setInputFiles(this.picture);
      await this.card.getByText("Photos: 1").waitFor();
    }
    await this.kept(this.answerKeep, place);
  }

  async couldNotCheck(reason: string): Promise<void> {
    const { place } = await this.onCard();
    await this.could.tap();
    await this.card.getByRole("button", { name: reason, exact: true }).tap();
    await this.kept(this.answerKeep, place);
  }

  /** Puts the step in hand off. */
  async skip(): Promise<void> {
    const before = await this.onCard();
    await this.more.tap();
    await this.page.getByRole("button", { name: /^Skip, come back/ }).tap();
    await this.otherCard(before);
  }

  /** Breaks the walk off, as one does who is called away. */
  async leave(): Promise<void> {
    await this.more.tap();
    await this.page.getByRole("button", { name: /^I am leaving/ }).tap();
    await this.page.getByRole("button", { name: "I am back" }).waitFor();
  }

  async comeBack(): Promise<void> {
    await this.page.getByRole("button", { name: "I am back" }).tap();
    await this.card.waitFor();
  }

  /** How many steps of the list of what is left are there because of a break. */
  async askedAgain(): Promise<number> {
    const address = new URL(this.page.url()).hash;
    await this.whatIsLeft.tap();
    await this.page.getByRole("button", { name: /^Left, / }).waitFor();
    const count = await this.page
      .getByRole("listitem")
      .filter({ hasText: "Asked again after a break" })
      .count();
    await this.page.evaluate((hash) => {
      window.location.hash = hash;
    }, address);
    await this.card.waitFor();
    return count;
  }

  /** Takes the last answer back; its card is in hand again. */
  async takeBack(): Promise<void> {
    await this.undo.tap();
    await this.strip.filter({ hasText: "taken back" }).waitFor({ timeout: PATIENCE_ms });
  }

  /** Whether nothing is left but what was put off, and the walk can be closed. */
  isAtEnd(): Promise<boolean> {
    return this.finishButton.isVisible();
  }

  async finish(): Promise<void> {
    await this.finishButton.tap();
    await this.page.getByRole("heading", { level: 1, name: "Decide", exact: true }).waitFor();
  }
}
