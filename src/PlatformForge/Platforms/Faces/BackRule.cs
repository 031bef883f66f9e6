using PlatformForge.Platforms.Edges;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Faces;

/// <summary>Holds a platform's back to vehicles that run behind it, and offers a width only after it was tried.</summary>
internal static class BackRule
{
    // Behind the coping a deck needs room for its back wall and a rib at least, mm.
    private const double LeastWidth = 5;

    // Widths are offered in these steps, mm; each try that does not fit yet takes off what it lacks.
    private const double Grid = 0.001;
    private const int Tries = 8;

    public static void Check(PlatformRequest request, BodyPlan lines, RequirementTrace trace, List<Finding> findings)
    {
        var (over, vehicles) = Over(request, lines, trace);
        int worst = Array.IndexOf(over, over.Max());
        if (over[worst] <= 0)
        {
            return;
        }

        var deck = request.Spec.Deck;
        double least = request.Spec.Coping.Width + LeastWidth;
        string key = $"{request.Spec.Key}.deck.width";
        double from = trace.Stations[First(over, deck.Width - least, worst)], to = trace.Stations[Last(over, deck.Width - least, worst)];
        findings.Add(Tried(request, deck.Width - over[worst], least) is { } width
            ? PlatformFindings.BackFouls(key, trace.Stations[worst], over[worst], vehicles[worst], width)
            : PlatformFindings.NoRoomBehind(key, trace.Stations[worst], over[worst], vehicles[worst], from, to, Shortened(request.Spec, from, to)));
    }

    // A platform that ends before a stretch, or begins after it, whichever leaves more.
    private static Cure Shortened(PlatformSpec spec, double from, double to) => from - spec.Face.From >= spec.Face.To - to
        ? Cure.Set($"{spec.Key}.face.to", Math.Floor(from) - 1)
        : Cure.Set($"{spec.Key}.face.from", Math.Ceiling(to) + 1);

    // By how much the back reaches into what runs behind it, per station, mm.
    private static (double[] Over, string[] Vehicles) Over(PlatformRequest request, BodyPlan lines, RequirementTrace trace)
    {
        var (behind, vehicles) = CopingRequirement.Behind(request, trace);
        double bank = BankWidth(request);
        return ([.. trace.Stations.Select((s, i) => lines.Back.At(s) + bank + request.Budget.Margin - behind[i])], vehicles);
    }

    // How far a bank reaches behind the deck beside the level platform, mm: all of it is held as if it were as high as the deck.
    private static double BankWidth(PlatformRequest request)
    {
        var (back, fall) = (request.Spec.Back, request.Spec.Deck.Crossfall > 0 ? request.Spec.Deck.Width / request.Spec.Deck.Crossfall : 0);
        return back.Kind == BackKind.Bank ? Math.Max(0,
            back.Slope * (request.Site.RailTop + request.Spec.Height - fall - back.Ground)) + (back.Apart ? back.Fit : 0) : 0;
    }

    // So much of a step over a whole number of steps is that number.
    private const double OnGrid = 1e-6;

    // Another width may have other facets, and so an edge that stands a little farther away.
    private static double? Tried(PlatformRequest request, double width, double least)
    {
        for (int i = 0; i < Tries; i++)
        {
            width = Math.Floor((width + (Grid * OnGrid)) / Grid) * Grid;
            if (width < least)
            {
                return null;
            }

            var narrower = request with { Spec = request.Spec with { Deck = request.Spec.Deck with { Width = width } } };
            var (lines, trace) = FacePlanner.LinesOf(narrower);
            double lack = Over(narrower, lines, trace).Over.Max();
            if (lack <= 0)
            {
                return width;
            }

            width -= Math.Max(lack, Grid);
        }

        return null;
    }

    private static int First(double[] over, double spare, int otherwise) => Array.FindIndex(over, o => o > spare) is var i && i >= 0 ? i : otherwise;

    private static int Last(double[] over, double spare, int otherwise) => Array.FindLastIndex(over, o => o > spare) is var i && i >= 0 ? i : otherwise;
}
