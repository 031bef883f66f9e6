namespace PlatformForge.Projects.Catalogue;

/// <summary>PF3: vehicles, their fit on the track, published rules.</summary>
internal static class ClearanceEntries
{
    private const string Published = "A published figure is missed: whether to follow it is the user's to choose.";

    public static readonly FindingEntry[] All =
    [
        new("PF3001", "The stretch to sweep is none.", "Give a second chainage greater than the first.", Reasons.Caller),
        new("PF3002", "The spacing or the error of a sweep is not above 0.", "Give both above 0.", Reasons.Caller),
        new("PF3003", "A play of the vehicles is negative or too large.", "Give 0 or a little more."),
        new(
            "PF3004",
            "No vehicle runs past the platform.",
            "List at least the longest coach and the widest engine that will.",
            "Which vehicles run there is the user's to say."),
        new("PF3010", "A vehicle's pivots are not apart.", "Give the distance between bogie centres, or the rigid wheelbase.", Reasons.Caller),
        new("PF3011", "A bogie's wheelbase is negative or too large.", "Give the distance between the bogie's end axles.", Reasons.Caller),
        new("PF3012", "A vehicle has no parts.", "Give at least its length and width.", Reasons.Caller),
        new("PF3013", "A part's heights are the wrong way round.", "Give an upper height greater than the lower one.", Reasons.Caller),
        new(
            "PF3014",
            "A part's outline is none.",
            "Check its width, and where it begins and ends.",
            Reasons.Caller,
            "Too few points or no area: either way it is no outline."),
        new("PF3015", "A part is carried by a bogie that has no wheelbase.", "Give the wheelbase, or let the body carry the part."),
        new(
            "PF3016",
            "A vehicle's wheels do not find room under its body.",
            "Give pivots or wheelbases within the bound that the message names.",
            OneThing: "Pivots beyond the body or bogies that overlap: the running gear does not fit."),
        new("PF3017", "A vehicle's least radius is not above 0.", "Give a radius above 0, or leave it out.", Reasons.Caller),
        new("PF3018", "A middle axle's side play is not above 0.", "Give a play above 0, or leave it out.", Reasons.Caller),
        new(
            "PF3020",
            "Too little track is known beside the platform to follow a vehicle on to it.",
            "State or measure more track, or say that it ends at buffers."),
        new(
            "PF3021",
            "A vehicle cannot stand on a curve.",
            "Give it a shorter wheelbase or the curve a larger radius, or keep it off the track.",
            OneThing: "Body, bogie or both: the curve is too sharp for it."),
        new("PF3022", "A curve is sharper than a vehicle is stated to take.", "State a lesser radius, or keep the vehicle off the track."),
        new("PF3023", "A track has a kink that no vehicle stays on.", "Check the points measured there.", Reasons.Measured),
        new("PF3024", "The bodies of a set run into one another on a curve.", "Give the gap that the message names."),
        new("PF3025", "A middle axle has to go farther aside than its play.", "Give it that play, if it has it."),
        new(
            "PF3026",
            "A vehicle comes beside the platform before it stands on known track.",
            "State or measure more track, or say that it ends at buffers.",
            Reasons.Several),
        new(
            "PF3050",
            "The deck's height misses a published figure.",
            "Raise or lower it to the figure.",
            Published,
            "Each rule states its heights in its own way."),
        new("PF3051", "The edge's distance from the track misses a published figure.", "Move it as the message says.", Published),
        new("PF3052", "The deck's width misses a published figure.", "Widen it.", Published),
        new("PF3053", "The ramps are steeper than a published figure.", "Make them longer.", Published),
        new("PF3054", "The crossfall is steeper than a published figure.", "Make it flatter.", Published),
        new("PF3055", "The edge cannot be held to a table, since no size of it is for this gauge and scale.", "Hold it to another rule.", Published),
        new("PF3056", "The edge's distance from the track changes faster than a published figure.", "Give a flatter taper.", Published),
        new("PF3057", "Something stands nearer to the edge than a published figure.", "Move it back.", Published),
        new("PF3058", "Something stands nearer to the track than a published figure.", "Move it back.", Published),
        new("PF3059", "How many figures of a published rule are missed.", "Look at the findings beside it.", Reasons.Note),
        new("PF3060", "The coping's overhang misses a published figure.", "Give the overhang that the message names.", Published),
        new("PF3070", "A body of a set takes figures over from the first body.", "Nothing is wrong; state them where they differ."),
    ];
}
