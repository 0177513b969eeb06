package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;

/**
 * A tag in a room finish schedule.
 *
 * @param exposure what the row says of the exposure of the room, as written; empty when nothing
 * @param surface a term of {@code location.surface}
 */
public record RoomUse(String tag, String room, String exposure, String surface, Origin origin) {}
