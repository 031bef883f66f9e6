using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Exports.Paper;

/// <summary>What paper sheets can be made on.</summary>
internal static class PaperRule
{
    public static IReadOnlyList<Finding> Check(PaperSpec paper) => [.. new[] { Bars(paper), Room(paper), Overlap(paper) }.OfType<Finding>()];

    /// <summary>The finding of a platform that would take too many sheets.</summary>
    public static Finding TooMany(PaperSpec paper, string platform) => Finding.Error(
        "PF7443", paper.Key + ".size", Invariant($"{platform} would take more than {PaperSet.MostSheets} sheets of {paper.SizeInWords}."),
        "Choose larger paper, such as A3, or a smaller overlap.").Curing(paper.Key + ".size", "\"A3\"");

    private static Finding? Bars(PaperSpec paper)
    {
        if (paper.MeasuredBars is not { } bars || (IsBar(bars.X) && IsBar(bars.Y)))
        {
            return null;
        }

        double wrong = IsBar(bars.X) ? bars.Y : bars.X;
        string likely = wrong is > 3.5 and < 4.4 ? " It may be in inches: these bars are given in mm." : wrong is > 9 and < 11
            ? " It may be in cm: these bars are given in mm." : "";
        return Finding.Error(
            "PF7441", paper.Key + ".bars", Invariant($"A bar of 100 mm cannot have measured {wrong:0.###} mm.{likely}"),
            Invariant($"Give what both bars of 100 mm measure on a sheet printed without bars, across and up, in mm from {PaperSpec.LeastBar} ")
                + Invariant($"to {PaperSpec.MostBar}, such as bars = [99.6, 100.2]. A print farther off was fitted to its page: print it at 100 %."));
    }

    private static bool IsBar(double mm) => mm is >= PaperSpec.LeastBar and <= PaperSpec.MostBar;

    private static Finding? Room(PaperSpec paper)
    {
        var room = SheetRoom.Of(paper, lying: false, new(1, 1));
        if (room.IsLarge)
        {
            return null;
        }

        double most = Math.Floor(Math.Min(
            (paper.Size.X - SheetRoom.LeftStrip - SheetRoom.LeastWindow) / 2,
            (Math.Min(paper.Size.X, paper.Size.Y) - SheetRoom.FootStrip - SheetRoom.LeastWindow) / 2));
        double least = Math.Ceiling(SheetRoom.LeastWindow + SheetRoom.FootStrip + (2 * paper.Margin));
        string message = Invariant($"On {paper.SizeInWords} with margins of {paper.Margin:0.###} mm the plan would have {Math.Max(0, room.Window.Width):0} ")
            + Invariant($"by {Math.Max(0, room.Window.Height):0} mm; the bars of 100 mm alone need {SheetRoom.LeastWindow:0}.");
        return most >= 0
            ? Finding.Error(
                "PF7440",
                paper.Key + ".margin",
                message,
                Invariant($"Give margins of {most:0} mm or less, or paper of at least {least:0} by {least:0} mm.")).Curing(most)
            : Finding.Error(
                "PF7440",
                paper.Key + ".size",
                message,
                Invariant($"Choose paper of at least {least:0} by {least:0} mm: A4 will do.")).Curing(paper.Key + ".size", "\"A4\"");
    }

    private static Finding? Overlap(PaperSpec paper)
    {
        var room = SheetRoom.Of(paper, lying: false, new(1, 1));
        double most = Math.Floor(Math.Min(room.Window.Width, room.Window.Height) / 3);
        return !room.IsLarge || paper.Overlap <= most
            ? null
            : Finding.Error("PF7442", paper.Key + ".overlap", Invariant($"Sheets that overlap by {paper.Overlap:0.###} mm show little else: ")
            + Invariant($"the plan has {room.Window.Width:0} by {room.Window.Height:0} mm on each."),
            Invariant($"Give {most:0} mm or less; 12 is enough to tape.")).Curing(most);
    }
}
