using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms;

/// <summary>Every message of this room in one place: what is wrong with figures, and what would be right with a figure.</summary>
internal static class PlatformFindings
{
    public static string Indexed(string key, string list, int index) => Invariant($"{key}.{list}[{index}]");

    public static Finding OutOfRange(string key, string what, double value, double least, double most) =>
        Finding.Error("PF4001", key, Invariant($"The {what} is {value}."), Invariant($"Give a {what} from {least} to {most}."));

    public static Finding FaceReversed(string key, double from, double to, double least) =>
        Finding.Error("PF4002", key, Invariant($"The platform goes from chainage {from} to {to} mm, {to - from:0.###} mm long."), Invariant($"Chainages increase along the track: give a 'to' of {from + least:0.###} or more."));

    public static Finding BeyondTrack(string key, double chainage, double length, string vehicle, double need, double? right) =>
        Finding.Error("PF4003", key, Invariant($"The platform reaches chainage {chainage:0.###} mm, the track goes from 0 to {length:0.###} mm."), Offered(right, need > 0 ? Invariant($", which leaves the {need:0.#} mm of {vehicle}, the longest vehicle,") : "") + Invariant($"lay {(chainage < 0 ? -chainage : chainage - length) + need:0.#} mm more track."), FaultKind.DesignRule);

    public static Finding TooLittleTrack(string key, string where, string vehicle, double have, double need, double? right) =>
        Finding.Error("PF4004", key, Invariant($"There are {have:0.#} mm of track {where} the platform; {vehicle}, the longest vehicle, needs {need:0.#} mm to be followed on to it."), Offered(right, "") + Invariant($"survey {need - have:0.#} mm more, or say that the track has buffers there."), FaultKind.DesignRule);

    public static Finding RampOneOfTwo(string key, bool both) =>
        Finding.Error("PF4005", key, both ? "The ramp has a length and a gradient." : "The ramp has neither a length nor a gradient.", "Give one of the two: { gradient = 8 } or { length = 96 }.");

    public static Finding RampFoot(string key, double foot, double least, double most) =>
        Finding.Error("PF4006", key, Invariant($"The ramp's foot is at {foot:0.###} mm above rail top."), Invariant($"Give a height from {Up(least)} (the deck's thickness over the baseboard) to {Down(most)} mm (below the platform)."), FaultKind.DesignRule);

    public static Finding RampsTooLong(string key, double start, double end, double length, double gradient) =>
        Finding.Error("PF4007", key, Invariant($"The ramps take {start:0.#} and {end:0.#} mm, the platform is {length:0.#} mm long."), Invariant($"Lengthen the platform by {start + end - length:0.#} mm, shorten the ramps to {length:0.#} mm together, or give a gradient of 1 in {Down(gradient)} or steeper."), FaultKind.DesignRule);

    public static Finding DeckTooNarrow(string key, double width, double least, string what) =>
        Finding.Error("PF4010", key, Invariant($"The deck is {width:0.###} mm wide; {what} take {least:0.###} mm."), Invariant($"Give {Up(least)} mm or more."), FaultKind.DesignRule);

    public static Finding CopingPart(string key, string what, double value, double most, string why) =>
        Finding.Error("PF4011", key, Invariant($"The {what} of {value:0.###} mm {why}."), Invariant($"Give {Down(most)} mm or less."), FaultKind.DesignRule);

    /// <param name="key">Key of the largest entry.</param>
    /// <param name="margin">What the entries come to, mm.</param>
    /// <param name="platform">Name of the platform.</param>
    /// <param name="width">Its width, mm.</param>
    /// <param name="entry">Name of the largest entry.</param>
    /// <param name="most">What that entry may be with the others as they are, mm; nil or less when the others alone are too much.</param>
    public static Finding AllowanceTooLarge(string key, double margin, string platform, double width, string entry, double most) =>
        Finding.Error("PF4024", key, Invariant($"The entries of the clearance budget come to {margin:0.##} mm, no less than the platform {platform} is wide, {width:0.##} mm."), most > 0 ? Invariant($"With the other entries as they are, the {entry} has to be below {most:0.##} mm; 0.1 to 1 mm is usual.") : Invariant($"All together have to stay below {width:0.##} mm; 0.1 to 1 mm each is usual."), FaultKind.DesignRule);

    public static Finding NothingSoLow(string key, double chainage, string part, double low, double gap) =>
        Finding.Error("PF4028", key + ".vertical_gap", Invariant($"At chainage {chainage:0.#} mm every part that comes past is higher than the coping and the vertical gap, so nothing says where the edge may be; the lowest is the {part}, {low:0.##} mm above rail top."), Invariant($"Give a vertical gap of {Up(gap)} mm or more, or leave bodies_pass_over out."), FaultKind.DesignRule);

    public static Finding RadiusNotKept(string key, double asked, double chainage, double radius) =>
        Finding.Warning("PF4208", key + ".least_radius", Invariant($"A least radius of {asked:0.#} mm can't be kept at chainage {chainage:0.#} mm: an edge that goes with the track bends to {radius:0.#} mm there."), Invariant($"A least radius of {Down(radius)} mm or less is kept everywhere."));

    public static Finding WithoutEffect(string key, string name, string because) =>
        Finding.Warning("PF4209", $"{key}.{name}", Invariant($"{name} has no effect: {because}."), Invariant($"Leave {name} out, or change what it belongs to."));

    public static Finding NothingRuns(string key, double chainage) =>
        Finding.Error("PF4020", key, Invariant($"No vehicle comes past chainage {chainage:0.#} mm on this side, so nothing says where the edge may be."), "List at least one vehicle that runs past the whole platform.", FaultKind.DesignRule);

    public static Finding TightCurve(string key, double chainage, double radius, double width, double most) =>
        Finding.Error("PF4021", key, Invariant($"At chainage {chainage:0.#} mm the track's radius is {radius:0.#} mm, and a platform {width:0.#} mm wide would reach too near to the curve's centre."), Invariant($"Give a width of {Down(most)} mm or less."), FaultKind.DesignRule);

    public static Finding BackFouls(string key, double chainage, double by, string vehicle, double width) =>
        Finding.Error("PF4022", key, BackReaches(chainage, by, vehicle), Invariant($"Give a width of {Down(width)} mm or less."), FaultKind.DesignRule);

    public static Finding NoRoomBehind(string key, double chainage, double by, string vehicle, double from, double to) =>
        Finding.Error("PF4022", key, BackReaches(chainage, by, vehicle), Invariant($"From chainage {from:0.#} to {to:0.#} mm there is no room for a platform between the tracks: end it before that, or begin it after."), FaultKind.DesignRule);

    private static string BackReaches(double chainage, double by, string vehicle) =>
        Invariant($"The back reaches {by:0.##} mm into what '{vehicle}' on another track needs at chainage {chainage:0.#} mm.");

    public static Finding FurnitureFouls(string key, string name, double chainage, double by) =>
        Finding.Error("PF4023", key, Invariant($"The {name} at chainage {chainage:0.#} mm stands {by:0.##} mm inside what vehicles need at its height."), Invariant($"Move it {Up(by)} mm farther from the edge."), FaultKind.DesignRule);

    public static Finding ThroughCoping(string key, string name, double by, double inset, bool orMore) =>
        Finding.Error("PF4030", key, Invariant($"The hole for the {name} cuts {by:0.####} mm into the coping."), Invariant($"Give an inset of {Bound(inset, orMore)}, which clears it."), FaultKind.DesignRule);

    public static Finding OffTheDeck(string key, string name, double by, double inset, bool orMore) =>
        Finding.Error("PF4031", key, Invariant($"The hole for the {name} comes {by:0.###} mm too near to the platform's back or beyond it."), Invariant($"Give an inset of {Bound(inset, orMore)}, which leaves enough material."), FaultKind.DesignRule);

    public static Finding OffTheEnds(string key, string name, double chainage, double least, double most) =>
        Finding.Error("PF4032", key, Invariant($"The {name} is at chainage {chainage:0.###} mm, off the platform."), Invariant($"Give a chainage from {Up(least)} to {Down(most)}."), FaultKind.DesignRule);

    public static Finding Overlap(string key, string name, string other, double chainage, double shift) =>
        Finding.Error("PF4033", key, Invariant($"The {name} and the {other} share the same place at chainage {chainage:0.#} mm."), Invariant($"Move one of them {Up(shift)} mm along the platform."), FaultKind.DesignRule);

    public static Finding TooDeep(string key, string name, double depth, double most, double railTop) =>
        Finding.Error("PF4034", key, Invariant($"The socket for the {name} is {depth:0.###} mm deep, more than the platform has there over its baseboard ({railTop:0.###} mm below rail top)."), most > 0 ? Invariant($"Give {Down(most)} mm or less.") : "Move it up the ramp.", FaultKind.DesignRule);

    public static Finding FenceGap(string key, FenceGapSpec gap, double from, double to, double least) =>
        Finding.Error("PF4041", key, Invariant($"The gap from {gap.From:0.###} to {gap.To:0.###} mm does not lie in order between {from:0.###} and {to:0.###}, or it leaves less than {least:0.###} mm."), Invariant($"Give gaps in order of chainage, {least:0.###} mm long or more, that far from one another, between {from:0.###} and {to:0.###}."), FaultKind.DesignRule);

    public static Finding FenceTooShort(string key, double from, double to, double least) =>
        Finding.Error("PF4042", key, Invariant($"The fence goes from chainage {from:0.###} to {to:0.###} mm."), Invariant($"Give it a length of {least:0.###} mm or more."), FaultKind.DesignRule);

    public static Finding ForcedCutOff(string key, double cut, double from, double to) =>
        Finding.Error("PF4050", key, Invariant($"The forced cut at {cut:0.###} mm is off the platform, or less than a slab's end from it."), Invariant($"Give a chainage from {Up(from)} to {Down(to)}, or leave it out."), FaultKind.DesignRule);

    public static Finding CutThroughFurniture(string key, string name, double chainage, double cut, double away) =>
        Finding.Error("PF4051", key, Invariant($"The forced cut at {cut:0.#} mm runs through the {name} at {chainage:0.#} mm, or leaves it no room."), Invariant($"Put it at {away:0.#} mm."), FaultKind.DesignRule);

    public static Finding RibsMoved(string key, int count, double most, IEnumerable<string> what) =>
        Finding.Note("PF4060", key, Invariant($"{count} {(count == 1 ? "rib" : "ribs")} stepped aside by up to {most:0.#} mm for: {string.Join(", ", what)}."));

    public static Finding RibLeftOut(string key, int index) =>
        Finding.Warning("PF4061", key, Invariant($"Rib {index} along the platform finds no room between walls and furniture and is left out."), "Ask for fewer ribs along the platform, or thinner ones.");

    public static Finding NarrowPlatform(string key, double width, double least, string clause) =>
        Finding.Warning("PF4201", key, Invariant($"The platform is {width:0.#} mm wide, less than the published least of {least:0.#} mm ({clause})."), Invariant($"Give {Up(least)} mm or more where the layout has room."));

    public static Finding ClearWidth(string key, string name, double clear, double least, double inset) =>
        Finding.Warning("PF4202", key, Invariant($"Between edge and {name} {clear:0.#} mm are clear, less than the published 6 ft, {least:0.#} mm."), inset > 0 ? Invariant($"An inset of {inset:0.#} mm would leave it, or a wider deck.") : Invariant($"Widen the deck by {Up(least - clear)} mm."));

    public static Finding SteepRamp(string key, double gradient, double length) =>
        Finding.Warning("PF4203", key, Invariant($"The ramp falls 1 in {gradient:0.##}, steeper than the published 1 in 8."), Invariant($"A length of {Up(length)} mm gives 1 in 8."));

    public static Finding LineOnArris(string key, double inset, double chamfer) =>
        Finding.Warning("PF4207", key, Invariant($"The white line begins {inset:0.###} mm from the edge, on the chamfer of {chamfer:0.###} mm."), Invariant($"Give an inset of {Up(chamfer)} mm or more."));

    public static Finding StatedReach(string key, double reach, string need, double least, double from, double to) =>
        Finding.Error("PF4025", key, Invariant($"The edge is stated at {reach:0.###} mm from the track's middle; {need}."), Invariant($"Give a reach of {Up(least)} mm or more, or edge = \"fitted\" or \"faired\", which keeps farther away only where that is needed, from chainage {from:0} to {to:0} mm."), FaultKind.DesignRule);

    public static Finding Collide(string key, string name, string other, double chainage, double by, string remedy) =>
        Finding.Error("PF4027", key, Invariant($"The platforms {name} and {other} stand in one another, by {by:0.##} mm at chainage {chainage:0.#} mm of {name}."), remedy, FaultKind.DesignRule);

    public static Finding DeckTooNarrowFor(string key, string name, double width, double least) =>
        Finding.Error("PF4035", key, Invariant($"There is no place for the {name} between the coping and the back of a deck {width:0.###} mm wide."), Invariant($"Widen the deck to {Up(least)} mm or more, or make it smaller."), FaultKind.DesignRule);

    // A figure first where there is one, then the other ways out.
    private static string Offered(double? right, string why) => right is { } figure ? Invariant($"Give {figure:0.###}{why} or ") : "Lay the platform elsewhere, or ";

    private static string Bound(double value, bool orMore) => orMore ? Up(value) + " mm or more" : Down(value) + " mm or less";

    // Figures offered as a remedy are rounded so that the rounded figure works too.
    private static string Up(double value) => (Math.Ceiling((value - Grain) * 1000) / 1000).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    private static string Down(double value) => (Math.Floor((value + Grain) * 1000) / 1000).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    // Rounding of sums, mm: keeps 3.2 from becoming 3.201.
    private const double Grain = 1e-9;
}
