using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Track;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Islands;

/// <summary>What can be wrong with an island, with what would work.</summary>
internal static class IslandFindings
{
    private static string At(PlatformSpec spec, Waist waist) =>
        Invariant($"at chainage {waist.First:0.#} mm of track '{spec.Face.Track}' and {waist.Second:0.#} mm of track '{spec.OtherFace!.Track}'");

    public static Finding TooNarrow(PlatformSpec spec, Waist waist, double needed, string what, double? coping) => Finding.Error(
        "PF4120",
        $"{spec.Key}.coping.width",
        waist.Width <= 0
            ? Invariant($"The two edges of {spec.Name} cross: {At(spec, waist)} they overlap by {-waist.Width:0.##} mm.")
            : Invariant($"{spec.Name} has a waist of {waist.Width:0.##} mm {At(spec, waist)}, narrower than the {needed:0.##} mm that {what} take."),
        (coping is { } c ? Invariant($"Give a coping width of {c:0.##} mm or less; or lay") : "Lay")
            + Invariant($" the two tracks {Math.Ceiling((needed - waist.Width) * 10) / 10:0.#} mm farther apart there, or end the platform before the waist."),
        FaultKind.DesignRule).Curing(coping is { } right ? Cure.Set($"{spec.Key}.coping.width", right) : null);

    public static Finding Narrow(PlatformSpec spec, Waist waist, double published) => Finding.Warning(
        "PF4121",
        spec.FaceKey,
        Invariant($"{spec.Name} is narrowest {At(spec, waist)}: {waist.Width:0.##} mm from edge to edge. 12 ft is the least for an island (common ")
            + Invariant($"practice), {published:0.#} mm in this scale."),
        Invariant($"Lay the tracks {Math.Ceiling((published - waist.Width) * 10) / 10:0.#} mm farther apart there, or keep everything that stands on the ")
            + "platform away from the waist.");

    public static Finding Told(PlatformSpec spec, Waist waist) => Finding.Note(
        "PF4122", spec.FaceKey, Invariant($"{spec.Name} is narrowest {At(spec, waist)}: {waist.Width:0.##} mm from edge to edge."));

    public static Finding NoMeeting(string key, FaceSpec first, FaceSpec second) => Finding.Error(
        "PF4123",
        key,
        Invariant($"Straight across from the {first.Side.ToString().ToLowerInvariant()} of track '{first.Track}', chainage {first.From:0.#} to {first.To:0.#} ")
            + Invariant($"mm, track '{second.Track}' does not run past with its {second.Side.ToString().ToLowerInvariant()} side towards it."),
        "Name the track on the platform's other side, and the side of that track on which the platform stands, both seen along its own direction.",
        FaultKind.DesignRule);

    public static Finding WrongSide(string key, FaceSpec first, FaceSpec second) => Finding.Error(
        "PF4124",
        key,
        Invariant($"Track '{second.Track}' lies {(second.Side == Side.Left ? "left" : "right")} of nothing that faces track '{first.Track}': ")
            + "the platform would lie on the far side of it.",
        Invariant($"Give side = \"{second.Side.Of("right", "left")}\" for track '{second.Track}'."),
        FaultKind.DesignRule).Curing(Cure.Text($"{key}.side", second.Side.Of("right", "left")));

    public static Finding SameTrack(string key, string track) => Finding.Error(
        "PF4125",
        $"{key}.track",
        Invariant($"Both faces are on track '{track}'."),
        "An island lies between two tracks: name the other one, or leave other_face out for a side platform.",
        FaultKind.DesignRule);

    public static Finding NotLevel(string key) => Finding.Error(
        "PF4126",
        key,
        "The deck of an island is level from edge to edge; a fall away from one edge would lift the other.",
        "Give 0, or leave it out.",
        FaultKind.DesignRule).Curing(Cure.Set(key, 0));

    public static Finding NoFence(string key) => Finding.Error(
        "PF4127",
        key,
        "An island has no back for a fence to stand along.",
        "Leave the fence out; posts of their own may stand in holes, in the middle.",
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));

    public static Finding InsetFromBack(string key, string first, string second) => Finding.Error(
        "PF4128",
        key,
        Invariant($"It is placed by the face on track '{second}', and its inset is told from the back, which an island does not have."),
        Invariant($"Say inset_from = \"edge\": the inset is then from the edge on track '{second}'. Or leave face out, and back means that edge as seen from ")
            + Invariant($"track '{first}'."),
        FaultKind.DesignRule);

    public static Finding BeyondFace(string key, FaceSpec face, double chainage, double within) => Finding.Error(
        "PF4129",
        key,
        Invariant($"Chainage {chainage:0.#} mm of track '{face.Track}' lies beyond the platform."),
        Invariant($"That face goes from {face.From:0.#} to {face.To:0.#} mm, and its ends lie square to the middle between both tracks."),
        FaultKind.DesignRule).Curing(Cure.Set(key, within));

    public static Finding Overtaken(string key, double chainage, string track) => Finding.Error(
        "PF4130",
        key,
        Invariant($"At chainage {chainage:0.#} mm track '{track}' bends back on itself, seen from the first face."),
        "An island needs two tracks that run on side by side: end it before that place.",
        FaultKind.DesignRule);

    public static Finding TooLittleTrack(string key, string track, bool before, double have, double need, string vehicle) => Finding.Error(
        "PF4131",
        key,
        Invariant($"There are {have:0.#} mm of track '{track}' {(before ? "before" : "after")} the platform's second face; {vehicle}, the longest vehicle on ")
            + Invariant($"it, needs {need:0.#} mm to be followed on to it."),
        Invariant($"Lay or survey {Math.Ceiling(need - have):0} mm more of that track, or say that it has buffers there; ")
            + "or shorten the first face, whose ends the second one's lie across from.",
        FaultKind.DesignRule);

    public static Finding FoulsOther(string key, string name, string track, double chainage, double lack) => Finding.Error(
        "PF4132",
        key,
        Invariant($"The {name} stands {lack:0.##} mm too near to what runs on track '{track}', at its chainage {chainage:0.#} mm: ")
            + "it is held to vehicles at all heights.",
        Invariant($"Move it {Math.Ceiling(lack * 100) / 100:0.##} mm or more, away from that edge."),
        FaultKind.DesignRule);

    public static Finding ClearWidth(string key, string name, string track, double chainage, double clear, double both, double least) => Finding.Warning(
        "PF4133",
        key,
        Invariant($"{PlatformFindings.Clear(name, clear, Invariant($"the edge on track '{track}'"))}, at its chainage {chainage:0.#} mm; ")
            + Invariant($"6 ft is the least that is published, {least:0.#} mm in this scale."),
        both / 2 >= least
            ? Invariant($"In the middle between both edges it leaves {both / 2:0.##} mm to either.")
            : Invariant($"Even in the middle only {both / 2:0.##} mm would be left to either edge: set it where the platform is {2 * least + 1:0} mm wide ")
            + "with its own width, away from the waist.");

    /// <summary>Heights of a deck above rails that are published, full-size mm: 2 ft 6 in to 3 ft (requirements of 1885 and 1902; British Railway Track,
    /// 1964).</summary>
    private const double LeastHeight = 2.5 * FullSize.Foot, MostHeight = 3 * FullSize.Foot;

    public static Finding Heights(PlatformSpec spec, PlatformSite site, double second)
    {
        string said = Invariant($"The rails of track '{spec.OtherFace!.Track}' lie {Math.Abs(spec.Height - second):0.##} ")
            + Invariant($"mm {(second < spec.Height ? "higher" : "lower")} than those of track '{spec.Face.Track}': the coping is {spec.Height:0.##} mm above ")
            + Invariant($"rail top on one face and {second:0.##} mm on the other");
        double low = site.Scale.ToModel(LeastHeight), high = site.Scale.ToModel(MostHeight);
        return second < low - Tolerances.Rounding || second > high + Tolerances.Rounding
            ? Finding.Warning("PF4141", $"{spec.Key}.height", said + Invariant($", which is not within the published 2 ft 6 in to 3 ft, {low:0.##} ")
            + Invariant($"to {high:0.##} mm in this scale."),
                Math.Max(low, low + spec.Height - second) <= Math.Min(high, high + spec.Height - second)
                    ? Invariant(
                        $"A height of {Math.Clamp(spec.Height, Math.Max(low, low + spec.Height - second), Math.Min(high, high + spec.Height - second)):0.##} ")
                            + "mm keeps within it on both."
                    : "No height keeps within it on both: lay the tracks nearer to one level, or leave it so.")
            : Finding.Note("PF4140", $"{spec.Key}.height", said + ".");
    }

    public static Finding BelowRails(PlatformSpec spec, double second, double least) => Finding.Error(
        "PF4142",
        $"{spec.Key}.height",
        Invariant($"The deck is level from edge to edge and comes to {second:0.##} mm above the rails of track '{spec.OtherFace!.Track}'; {least:0.##} mm is ")
            + "the least.",
        Invariant($"Give a height of {Math.Ceiling((spec.Height - second + least) * 100) / 100:0.##} mm or more, or another rail_top for that track."),
        FaultKind.DesignRule).Curing(Cure.Set($"{spec.Key}.height", Math.Ceiling((spec.Height - second + least) * 100) / 100));

    public static Finding RampOfOneFace(string key, string track, string firstKey) => Finding.Error(
        "PF4144",
        key,
        Invariant($"A ramp slopes from edge to edge, but along track '{track}' the platform ends in a wall there."),
        Invariant($"State a ramp along the first face too ({firstKey}), or leave this one out."),
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));

    public static Finding OwnGradient(string key, double found, double length) => Finding.Error(
        "PF4145",
        key,
        Invariant($"A ramp is one plane from edge to edge, so that it prints lying on its slope: it falls along both faces alike, here 1 in {found:0.##}."),
        Invariant($"Leave the gradient out. Give a length of this face's own (straight across it is {length:0.#} mm), or a foot."),
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));

    public static Finding RampTwice(string key, double length, double told, double wanted) => Finding.Error(
        "PF4146",
        key,
        Invariant($"A ramp is one plane: {length:0.#} mm long, its foot on this face comes to {told:0.##} mm above rail top, not {wanted:0.##}."),
        Invariant($"Leave the foot out, or give {told:0.##} mm; or leave the length out."),
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));

    public static Finding RampLeans(string key, double length, double lean, double most, double right) => Finding.Error(
        "PF4147",
        key,
        Invariant($"With a ramp of {length:0.#} mm on this face the line at its head lies {lean:0.#} mm askew; more than {most:0.#} mm leaves no sound joint ")
            + "there.",
        Invariant($"Give {right:0.##} mm, or change the ramp of the first face."),
        FaultKind.DesignRule).Curing(Cure.Set(key, Math.Round(right, 2)));

    public static Finding FarFootLow(string key, double length, double told, double lowest, double right) => Finding.Error(
        "PF4149",
        key,
        Invariant($"With a ramp of {length:0.#} mm on this face its foot comes to {told:0.##} mm above rail top, too low for the deck to fit over the ")
            + Invariant($"baseboard ({lowest:0.##} mm)."),
        Invariant($"Give {right:0.##} mm, or a gentler ramp on the first face: a ramp is one plane."),
        FaultKind.DesignRule).Curing(Cure.Set(key, right));

    public static Finding FarRampsTooLong(string key, double start, double end, double length) => Finding.Error(
        "PF4148",
        key,
        Invariant($"The ramps of the second face are {start:0.#} and {end:0.#} mm long, together more than its {length:0.#} mm."),
        "Make them shorter, or leave them out: they then begin straight across from those of the first face.",
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));
}
