using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Specs;

/// <summary>Every message of this room in one place: what is wrong with figures, and what would be right with a figure.</summary>
internal static class PlatformFindings
{
    public static string Indexed(string key, string list, int index) => Invariant($"{key}.{list}[{index}]");

    /// <summary>A figure outside the range of its key.</summary>
    public static Finding OutOfRange(string key, double value, NumberRange range, string unit) =>
        Finding.Error(
            "PF4001",
            key,
            $"{key[(key.LastIndexOf('.') + 1)..]} is {Shown(value)}{(unit.Length > 0 ? " " + unit : "")}.",
            $"Give a number {range.InWords(unit)}.")
            .Curing(double.IsNaN(value) ? null : Cure.Set(key, range.Nearest(value)));

    public static Finding FaceReversed(string key, double from, double to, double least) =>
        Finding.Error(
            "PF4002",
            key,
            Invariant($"The platform goes from chainage {Shown(from)} to {Shown(to)} ")
                + Invariant($"mm, {(to > from ? Invariant($"{to - from:0.###} mm long") : "back along the track")}."),
            Invariant($"Chainages increase along the track: give a 'to' of {Up(from + least)} or more.")).Curing(key, Up(from + least));

    public static Finding BeyondTrack(string key, double chainage, double length, string vehicle, double need, double? right) =>
        Finding.Error("PF4003", key, Invariant($"The platform reaches chainage {chainage:0.###} mm, the track goes from 0 to {length:0.###} ")
            + "mm.", Offered(right, need > 0 ? Invariant($", which leaves the {need:0.#} mm of {vehicle}, the longest vehicle,") : "")
            + Invariant($"lay {(chainage < 0 ? -chainage : chainage - length) + need:0.#} mm more track."),
            FaultKind.DesignRule).Curing(right is { } figure ? Cure.Set(key, figure) : null);

    public static Finding TooLittleTrack(string key, string where, string vehicle, double have, double need, double? right) =>
        Finding.Error(
            "PF4004",
            key,
            Invariant($"There are {have:0.#} mm of track {where} the platform; {vehicle}, the longest vehicle, needs {need:0.#} mm to be followed on to it."),
            Offered(right, "") + Invariant($"survey {need - have:0.#} mm more, or say that the track has buffers there."),
            FaultKind.DesignRule).Curing(right is { } figure ? Cure.Set(key, figure) : null);

    public static Finding RampOneOfTwo(string key, bool both) =>
        Finding.Error(
            "PF4005",
            key,
            both ? "The ramp has a length and a gradient." : "The ramp has neither a length nor a gradient.",
            "Give one of the two: { gradient = 8 } or { length = 96 }.");

    /// <param name="key">Key of the foot's height.</param>
    /// <param name="foot">That height, mm above rail top.</param>
    /// <param name="least">Least height at which the deck fits over the baseboard.</param>
    /// <param name="height">Height of the platform, which the foot has to be below.</param>
    public static Finding RampFoot(string key, double foot, double least, double height) =>
        Finding.Error(
            "PF4006",
            key,
            Invariant($"The ramp's foot is at {foot:0.###} mm above rail ")
                + Invariant(
                    $"top, {(foot < least ? "too low for the deck to fit over the baseboard" : Invariant($"not below the platform at {height:0.###} mm"))}."),
            least < height - Grain
                ? Invariant($"Give a height of {Up(least)} mm or more, where the deck fits over the baseboard, and below {height:0.###} mm, the platform's.")
                : "Leave the ramp out, or make the deck thinner: over so low a platform there is no room to slope.",
            FaultKind.DesignRule).Curing(least < height - Grain ? Cure.Set(
                key,
                foot < least ? Ceiled(least) : Math.Max(least, height - 1)) : Cure.LeaveOut(key[..key.LastIndexOf('.')]));

    public static Finding RampsTooLong(string key, double start, double end, double length, double gradient)
    {
        var (longer, rest) = start >= end ? ("start", length - end) : ("end", length - start);
        return Finding.Error("PF4007", key, Invariant($"The ramps take {start:0.#} and {end:0.#} mm, the platform is {length:0.#} mm ")
            + "long.", Invariant($"Lengthen the platform by {Up(start + end - length)} mm, shorten the ramps to {Down(length)} mm together, or give a ")
            + Invariant($"gradient of 1 in {Down(gradient)} or steeper."), FaultKind.DesignRule)
            .Curing(rest > 0 ? Cure.Set($"{key}.{longer}.length", Floored(rest)) : Cure.LeaveOut($"{key}.{longer}"));
    }

    public static Finding DeckTooNarrow(string key, double width, double least, string what) =>
        Finding.Error(
            "PF4010",
            key,
            Invariant($"The deck is {width:0.###} mm wide; {what} take {least:0.###} mm."),
            Invariant($"Give {Up(least)} mm or more."),
            FaultKind.DesignRule).Curing(key, Up(least));

    /// <param name="key">Key of the part.</param>
    /// <param name="what">Its name.</param>
    /// <param name="value">Its size, mm.</param>
    /// <param name="most">Largest that there is room for, mm; below 0 when there is none.</param>
    /// <param name="why">What is wrong with it, after the figure.</param>
    /// <param name="instead">What to change where there is no room.</param>
    public static Finding CopingPart(string key, string what, double value, double most, string why, (string Sentence, Cure? Cure) instead) =>
        Finding.Error(
            "PF4011",
            key,
            Invariant($"The {what} of {value:0.###} mm {why}."),
            most >= 0 ? Invariant($"Give {Down(most)} mm or less.") : $"No size of it has room: {instead.Sentence}.",
            FaultKind.DesignRule)
            .Curing(most >= 0 ? Cure.Set(key, Floored(most)) : instead.Cure);

    /// <param name="key">Key of the budget.</param>
    /// <param name="margin">What the entries come to, mm.</param>
    /// <param name="platform">Name of the platform.</param>
    /// <param name="width">Its width, mm.</param>
    /// <param name="entry">Name of the largest entry.</param>
    /// <param name="most">What that entry may be with the others as they are, mm; nil or less when the others alone are too much.</param>
    /// <param name="entryKey">Its key; null when it has none.</param>
    public static Finding AllowanceTooLarge(string key, double margin, string platform, double width, string entry, double most, string? entryKey) =>
        Finding.Error("PF4024", key, Invariant($"The entries of the clearance budget come to {margin:0.##} mm, no less than the platform {platform} is ")
            + Invariant($"wide, {width:0.##} mm."), most > 0 ? Invariant($"With the other entries as they are, the {entry} has to be below {most:0.##} mm; ")
            + "0.1 to 1 mm is usual." : Invariant($"All together have to stay below {width:0.##} mm; 0.1 to 1 mm each is usual."),
            FaultKind.DesignRule).Curing(entryKey is null || most <= 0 ? null : Cure.Set(entryKey, Math.Min(1, Floored(most / 2))));

    /// <param name="key">Key of the face.</param>
    /// <param name="chainage">Where it is, mm.</param>
    /// <param name="part">The lowest part there.</param>
    /// <param name="low">Its underside above rail top, mm.</param>
    /// <param name="gap">Least vertical gap that counts it, mm.</param>
    /// <param name="ramp">Key of the foot of the ramp that the place is on, and the least height of it at the gap stated; null on the level.</param>
    public static Finding NothingSoLow(string key, double chainage, string part, double low, double gap, (string Key, double Foot)? ramp)
    {
        string foot = ramp is { } it ? Invariant($" raise the ramp's foot ({it.Key[(it.Key.IndexOf('.', StringComparison.Ordinal) + 1)..]}) to {Up(it.Foot)} ")
            + "mm or more," : "";
        return Finding.Error("PF4028", key + ".vertical_gap", Invariant($"At chainage {chainage:0.#} mm every part that comes past is higher than ")
            + Invariant($"the {(ramp is null ? "coping" : "ramp")} and the vertical gap, so nothing says where the edge may be; ")
            + Invariant($"the lowest is the {part}, {low:0.##} mm above rail top."),
            Invariant($"Give a vertical gap of {Up(gap)} mm or more,{foot} or leave bodies_pass_over out."), FaultKind.DesignRule)
            .Curing(key + ".vertical_gap", Up(gap));
    }

    public static Finding RadiusNotKept(string key, double asked, double chainage, double radius) =>
        Finding.Warning("PF4208", key + ".least_radius", Invariant($"A least radius of {asked:0.#} mm can't be kept at chainage {chainage:0.#} mm: ")
            + Invariant($"an edge that goes with the track bends to {radius:0.#} mm there."),
            Invariant($"A least radius of {Down(radius)} mm or less is kept everywhere.")).Curing(key + ".least_radius", Down(radius));

    public static Finding WithoutEffect(string key, string name, string because) =>
        Finding.Warning(
            "PF4209",
            $"{key}.{name}",
            Invariant($"{name} has no effect: {because}."),
            Invariant($"Leave {name} out, or change what it belongs to.")).Curing(Cure.LeaveOut($"{key}.{name}"));

    public static Finding NothingRuns(string key, double chainage) =>
        Finding.Error(
            "PF4020",
            key,
            Invariant($"No vehicle comes past chainage {chainage:0.#} mm on this side, so nothing says where the edge may be."),
            "List at least one vehicle that runs past the whole platform.",
            FaultKind.DesignRule);

    public static Finding TightCurve(string key, double chainage, double radius, double width, double most) =>
        Finding.Error("PF4021", key, Invariant($"At chainage {chainage:0.#} mm the track's radius is {radius:0.#} mm, and a platform {width:0.#} mm wide ")
            + "would reach too near to the curve's centre.", most > 0 ? Invariant($"Give a width of {Down(most)} mm or less.")
                : "Even a narrow platform would: lay it where the track bends less.",
                FaultKind.DesignRule).Curing(most > 0 ? Cure.Set(key, Floored(most)) : null);

    public static Finding BackFouls(string key, double chainage, double by, string vehicle, double width) =>
        Finding.Error(
            "PF4022",
            key,
            BackReaches(chainage, by, vehicle),
            Invariant($"Give a width of {Down(width)} mm or less."),
            FaultKind.DesignRule).Curing(key, Down(width));

    public static Finding NoRoomBehind(string key, double chainage, double by, string vehicle, double from, double to, Cure? cure) =>
        Finding.Error("PF4022", key, BackReaches(chainage, by, vehicle),
            (to > from ? Invariant($"From chainage {from:0.#} to {to:0.#} mm") : Invariant($"At chainage {from:0.#} mm"))
            + " there is no room for a platform between the tracks: end it before that, or begin it after.", FaultKind.DesignRule).Curing(cure);

    private static string BackReaches(double chainage, double by, string vehicle) =>
        Invariant($"The back reaches {by:0.##} mm into what '{vehicle}' on another track needs at chainage {chainage:0.#} mm.");

    public static Finding FurnitureFouls(string key, string name, double chainage, double by, Cure? cure) =>
        Finding.Error(
            "PF4023",
            key,
            Invariant($"The {name} at chainage {chainage:0.#} mm stands {by:0.##} mm inside what vehicles need at its height."),
            Invariant($"Move it {Up(by)} mm farther from the edge{(cure is null ? "" : $", an inset of {cure.Value} mm")}."),
            FaultKind.DesignRule).Curing(cure);

    public static Finding ThroughCoping(string key, string name, double by, double inset, bool orMore) =>
        Finding.Error(
            "PF4030",
            key,
            Invariant($"The hole for the {name} cuts {by:0.####} mm into the coping."),
            Invariant($"Give an inset of {Bound(inset, orMore)}, which clears it."),
            FaultKind.DesignRule).Curing(key, orMore ? Up(inset) : Down(inset));

    public static Finding OffTheDeck(string key, string name, double by, double inset, bool orMore) =>
        Finding.Error(
            "PF4031",
            key,
            Invariant($"The hole for the {name} comes {by:0.###} mm too near to the platform's back or beyond it."),
            Invariant($"Give an inset of {Bound(inset, orMore)}, which leaves enough material."),
            FaultKind.DesignRule).Curing(key, orMore ? Up(inset) : Down(inset));

    public static Finding OffTheEnds(string key, string name, double chainage, double least, double most, Cure? smaller = null) =>
        Finding.Error(
            "PF4032",
            key,
            Invariant($"The {name} is at chainage {chainage:0.###} mm, off the platform."),
            Between("chainage", least, most, "Nothing of its size finds room on so short a platform: lengthen the platform, or make it smaller."),
            FaultKind.DesignRule).Curing(least <= most ? Cure.Set(key, chainage < least ? Ceiled(least) : Floored(most)) : smaller);

    public static Finding TooDeep(string key, string name, double depth, double most, double railTop) =>
        Finding.Error("PF4034", key, Invariant($"The socket for the {name} is {depth:0.###} mm deep, more than the platform has there over its baseboard ")
            + Invariant($"({railTop:0.###} mm below rail top)."), most > 0 ? Invariant($"Give {Down(most)} mm or less.")
                : "Move it up the ramp, to where the platform is deeper.", FaultKind.DesignRule).Curing(most > 0 ? Cure.Set(key, Floored(most)) : null);

    public static Finding HoleTooDeep(string key, string name, double chainage, double depth, double most, double railTop) =>
        Finding.Error("PF4101", key, Invariant($"The hole for the {name} at chainage {chainage:0.#} mm is {depth:0.###} mm deep, more than the platform has ")
            + Invariant($"there over its baseboard ({railTop:0.###} mm below rail top)."),
            (most > 0 ? Invariant($"Give {Down(most)} mm or less, or leave") : "Leave") + " depth out: then the hole goes right through the deck.",
            FaultKind.DesignRule).Curing(most > 0 ? Cure.Set(key, Floored(most)) : Cure.LeaveOut(key));

    public static Finding OddPanelMoved(string key, double from, double to, double wanted, string because) =>
        Finding.Note(
            "PF4102",
            key,
            Invariant($"The odd panel of the fence stands from chainage {from:0.#} to {to:0.#} mm, not at {wanted:0.#} mm: {because}."));

    public static Finding OddPanelShared(string key, double from, double to, double rest, double length) =>
        Finding.Note("PF4103", key, Invariant($"From chainage {from:0.#} to {to:0.#} mm whole panels would leave {rest:0.##} mm, too little between two ")
            + Invariant($"posts: two odd panels of {length:0.##} mm share it with a whole one."));

    /// <param name="key">Key of the fence.</param>
    /// <param name="from">First post, mm.</param>
    /// <param name="to">Last post, mm.</param>
    /// <param name="least">Shortest fence, mm.</param>
    /// <param name="ends">Whether its first and its last chainage are stated.</param>
    public static Finding FenceTooShort(string key, double from, double to, double least, (bool From, bool To) ends) =>
        Finding.Error("PF4042", key + ".from", to > from ? Invariant($"The fence is {to - from:0.###} mm long, from chainage {from:0.###} to {to:0.###} ")
            + "mm." : Invariant($"The fence would begin at chainage {from:0.###} mm and end at {to:0.###}."),
            Invariant($"Give it a length of {least:0.###} mm or more."), FaultKind.DesignRule)
            .Curing(ends.From ? ends.To ? Cure.Set(
                key + ".to",
                Ceiled(from + least)) : Cure.LeaveOut(key + ".from") : ends.To ? Cure.LeaveOut(key + ".to") : Cure.LeaveOut(key + ".end_inset"));

    public static Finding ForcedCutOff(string key, double cut, double from, double to) =>
        Finding.Error(
            "PF4050",
            key,
            Invariant($"The cut at {cut:0.###} mm is off the platform, or less than a slab's end from it."),
            from <= to ? Invariant($"Give a chainage from {Up(from)} to {Down(to)}, or leave it out.") : "Leave it out: the platform is too short to be cut.",
            FaultKind.DesignRule).Curing(from <= to ? Cure.Set(key, cut < from ? Ceiled(from) : Floored(to)) : Cure.LeaveOut(key));

    public static Finding CutThroughFurniture(string key, string name, double chainage, double cut, (string Key, double Chainage)? away) =>
        Finding.Error(
            "PF4051",
            key,
            Invariant($"The cut at {cut:0.#} mm runs through the {name} at {chainage:0.#} mm, or leaves it no room."),
            away is { } free ? Invariant($"Put it at {free.Chainage:0.#} mm.") : "Leave the cut out, or move what stands there.",
            FaultKind.DesignRule)
            .Curing(away is { } at ? Cure.Set(at.Key, at.Chainage) : null);

    public static Finding RibsMoved(string key, int count, double most, IEnumerable<string> what) =>
        Finding.Note(
            "PF4060",
            key,
            Invariant($"{count} {(count == 1 ? "rib" : "ribs")} stepped aside from even places by up to {most:0.#} mm for: {string.Join(", ", what)}."));

    public static Finding NoRibWithin(string key, double from, double to, double distance, double pitch, IEnumerable<string> what) =>
        Finding.Warning("PF4100", key, Invariant($"From chainage {from:0.#} to {to:0.#} mm there is no place for a rib: {distance:0.##} mm ")
            + Invariant($"where {pitch:0.###} mm are asked. In the way: {string.Join(", ", what)}."),
            Invariant($"Give a pitch of {Up(distance)} mm or more, or move what is in the way.")).Curing(Cure.Set(key, Ceiled(distance)));

    public static Finding RibLeftOut(string key, int index, int count) =>
        Finding.Warning(
            "PF4061",
            key,
            Invariant($"Rib {index} along the platform finds no room between walls and furniture and is left out."),
            "Ask for fewer ribs along the platform, or thinner ones.").Curing(count > 0 ? Cure.Set(key, count - 1) : null);

    public static Finding NarrowPlatform(string key, double width, double least, string clause) =>
        Finding.Warning(
            "PF4201",
            key,
            Invariant($"The platform is {width:0.#} mm wide, less than the published least of {least:0.#} mm ({clause})."),
            Invariant($"Give {Up(least)} mm or more where the layout has room.")).Curing(key, Up(least));

    public static Finding ClearWidth(string key, string name, double clear, double least, (double Inset, bool OrMore) right) =>
        Finding.Warning("PF4202", key, Invariant($"{Clear(name, clear)}, less than the published 6 ft, {least:0.#} ")
            + "mm.", right.Inset > 0 ? Invariant($"An inset of {Bound(right.Inset, right.OrMore)} leaves it, or a wider deck.")
                : Invariant($"Widen the deck by {Up(least - clear)} mm."))
            .Curing(right.Inset > 0 ? Cure.Set(key, right.OrMore ? Ceiled(right.Inset) : Floored(right.Inset)) : null);

    // What is left between an edge and something; where nothing is, by how much it lies over the edge.
    internal static string Clear(string name, double clear, string edge = "the edge") => clear >= LeastClear
        ? Invariant($"Between {edge} and the {name} {clear:0.#} mm are clear")
        : clear > -LeastClear ? Invariant($"Between {edge} and the {name} nothing is clear")
        : Invariant($"The {name} lies {-clear:0.#} mm over {edge}, and nothing is clear");

    // Less is told as nothing, mm: it would be rounded to that.
    private const double LeastClear = 0.05;

    public static Finding SteepRamp(string key, double gradient, double length) =>
        Finding.Warning(
            "PF4203",
            key,
            Invariant($"The ramp falls 1 in {gradient:0.##}, steeper than the published 1 in 8."),
            Invariant($"A length of {Up(length)} mm gives 1 in 8.")).Curing(key + ".length", Up(length));

    public static Finding LineOnArris(string key, double inset, double chamfer) =>
        Finding.Warning(
            "PF4207",
            key,
            Invariant($"The white line begins {inset:0.###} mm from the edge, on the chamfer of {chamfer:0.###} mm."),
            Invariant($"Give an inset of {Up(chamfer)} mm or more.")).Curing(key, Up(chamfer));

    public static Finding StatedReach(string key, double reach, string need, double least, double from, double to) =>
        Finding.Error("PF4025", key, Invariant($"The edge is stated at {reach:0.###} mm from the track's ")
            + Invariant($"middle; {need}."), Invariant($"Give a reach of {Up(least)} mm or more, or edge = \"fitted\" or \"faired\", which keeps farther away ")
            + Invariant($"only where that is needed, from chainage {from:0} to {to:0} mm."), FaultKind.DesignRule).Curing(key, Up(least));

    public static Finding Collide(string key, string name, string other, double chainage, double by, string remedy, Cure? cure) =>
        InOneAnother(key, Invariant($"The platforms {name} and {other} stand in one another, by {by:0.##} mm at chainage {chainage:0.#} mm ")
            + Invariant($"of {name}."), remedy, cure);

    /// <summary>The platform's own track comes back beside it beyond the stretch that it serves.</summary>
    /// <param name="key">Key of what is to be changed.</param>
    /// <param name="who">The platform, the track, and the vehicle with its part.</param>
    /// <param name="where">How far the platform reaches into what is needed, chainage of the track where it comes back, and of the platform there, mm.</param>
    /// <param name="along">First and last chainage of the platform that is in the way, mm; null where it is one place.</param>
    /// <param name="remedy">What works, in words and as a cure.</param>
    public static Finding TrackComesBack(string key, (string Name, string Track, string Vehicle, string Part) who, (double By, double Back, double Own) where,
        (double From, double To)? along, (string Sentence, Cure? Cure) remedy) =>
        Finding.Error(
            "PF4029",
            key,
            Invariant($"Track '{who.Track}' comes back beside {who.Name}: at its chainage {where.Back:0.#} mm '{who.Vehicle}' ({who.Part}) with its ")
                + Invariant($"clearance needs {where.By:0.00} mm of the platform at chainage {where.Own:0.#} mm")
                + (along is var (from, to) ? Invariant($", and some of it from {from:0.#} to {to:0.#} mm.") : "."),
            remedy.Sentence,
            FaultKind.DesignRule).Curing(remedy.Cure);

    /// <summary>The bank of a platform, where it turns round an end, and another platform or its bank.</summary>
    /// <param name="key">Key of the platform's returns.</param>
    /// <param name="who">The platform, the end of it, and the other platform.</param>
    /// <param name="by">How far one stands in the other, mm.</param>
    /// <param name="rest">The returns that are left without that one.</param>
    public static Finding ReturnMeets(string key, (string Name, string End, string Other) who, double by, string rest) =>
        InOneAnother(
            key,
            Invariant($"The bank of {who.Name}, where it turns round the platform's {who.End}, and {who.Other} stand in one another, by {by:0.##} mm."),
            $"Leave that return out (returns = \"{rest}\"), or make the platform shorter there.",
            Cure.Text(key, rest));

    private static Finding InOneAnother(string key, string message, string remedy, Cure? cure) =>
        Finding.Error("PF4027", key, message, remedy, FaultKind.DesignRule).Curing(cure);

    public static Finding DeckTooNarrowFor(string key, string name, double width, double least, string deck) =>
        Finding.Error(
            "PF4035",
            key,
            Invariant($"There is no place for the {name} between the coping and the back of a deck {width:0.###} mm wide."),
            Invariant($"Widen the deck to {Up(least)} mm or more, or make it smaller."),
            FaultKind.DesignRule).Curing(deck, Up(least));

    // A figure first where there is one, then the other ways out.
    private static string Offered(
        double? right,
        string why) => right is { } figure ? Invariant($"Give {figure:0.###}{why} or ") : "Lay the platform elsewhere, or ";

    private static string Bound(double value, bool orMore) => orMore ? Up(value) + " mm or more" : Down(value) + " mm or less";

    private static string Between(string what, double least, double most, string otherwise) =>
        least > most ? otherwise : Up(least) == Down(most) ? Invariant($"Give a {what} of {Up(least)}.")
            : Invariant($"Give a {what} from {Up(least)} to {Down(most)}.");

    // A stated figure as it is repeated: not with digits that nobody wrote.
    private static string Shown(double value) => double.IsFinite(value) ? Math.Abs(value) < 1e7 ? Invariant($"{value:0.###}") : Invariant($"{value:0.###E+0}")
        : "no number";

    // Figures offered as a remedy are rounded so that the rounded figure works too.
    internal static double Ceiled(double value) => Math.Ceiling((value - Grain) * 1000) / 1000;

    internal static double Floored(double value) => Math.Floor((value + Grain) * 1000) / 1000;

    private static string Up(double value) => Ceiled(value).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    private static string Down(double value) => Floored(value).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    // Rounding of sums, mm: keeps 3.2 from becoming 3.201.
    internal const double Grain = Tolerances.Rounding;
}
