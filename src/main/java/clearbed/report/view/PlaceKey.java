package clearbed.report.view;

import clearbed.model.document.Origin;

/** What of an origin tells its place from others. */
record PlaceKey(String document, String sheet, String cell, Integer page, Integer paragraph) {
  static PlaceKey of(Origin o) {
    return new PlaceKey(o.document(), o.sheet(), o.cell(), o.page(), o.paragraph());
  }
}
