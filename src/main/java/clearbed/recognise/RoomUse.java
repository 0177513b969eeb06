package clearbed.recognise;

import clearbed.model.Origin;

/**
 * A tag in a room finish schedule.
 *
 * @param surface a term of {@code location.surface}
 */
public record RoomUse(String tag, String room, String surface, Origin origin) {}
