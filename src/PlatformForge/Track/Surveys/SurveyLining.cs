using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Remarks;
using PlatformForge.Track.Surveys.Results;
using static System.FormattableString;

namespace PlatformForge.Track.Surveys;

/// <summary>
/// Takes the figures of a string-lining table from a survey. The rule of slews holds for stations half a chord apart and for the
/// chord that was measured over, so that readings are taken as they are only where both are so.
/// </summary>
internal static class SurveyLining
{
    // A fair versine below this part of the ruler error is straight track.
    private const double StraightPart = 0.1;

    // Stations and chords that differ by no more than this part are the same.
    private const double Alike = 0.01;

    public static StringLining Of(SurveyedTrack track, double chord)
    {
        if (!(chord > 0 && chord <= StringLining.LongestChord(track)))
        {
            throw new ArgumentOutOfRangeException(nameof(chord), chord, "A chord for string lining is over 0 and at most half the track.");
        }

        var (figures, notes) = track.Versines.Count == 0 ? FromPlaces(track, chord) : FromVersines(track, chord);
        double[] stations = [.. figures.Select(f => f.Station)], measured = [.. figures.Select(f => f.Measured)], fair = [.. figures.Select(f => f.Fair)];
        var table = StringLining.Of(stations, measured, StringLining.Propose(measured, fair, StraightPart * track.RulerError));
        return table with
        {
            Rows = [.. table.Rows.Select((r, i) => r with { Note = figures[i].Note })],
            Chord = chord,
            Notes = notes,
        };
    }

    private static (Figure[] Figures, string[] Notes) FromPlaces(SurveyedTrack track, double chord)
    {
        // Readings that were left out have no part in the misses.
        var kept = track.Residuals.Where(r => !r.IsOutlier).OrderBy(r => r.Chainage).ToArray();
        double[] chainages = [.. kept.Select(r => r.Chainage)];
        double half = chord / 2;
        int left = track.Residuals.Count - kept.Length;
        return (
            [.. Stations(track, chord).Select(s =>
            {
                double fair = VersineOfLine.Of(track.Line, s, chord);
                double miss = ((MissAt(kept, chainages, s - half) + MissAt(kept, chainages, s + half)) / 2) - MissAt(kept, chainages, s);
                return new Figure(s, fair + miss, fair);
            })],
            left == 0 ? [] : [Invariant($"{Readings(left)} named as misread {(left == 1 ? "is" : "are")} not used.")]);
    }

    private static (Figure[] Figures, string[] Notes) FromVersines(SurveyedTrack track, double chord)
    {
        int every = EveryReading(track, chord, out string? why);
        if (every == 0)
        {
            return (
                [.. Stations(track, chord).Select(s => VersineOfLine.Of(track.Line, s, chord))
                    .Zip(Stations(track, chord), (v, s) => new Figure(s, v, v, "of the fitted line"))],
                [$"{why} The versines here are those of the fitted line, not readings, so that there is nothing to slew."]);
        }

        var used = track.Residuals.Where((_, i) => i % every == 0).ToArray();
        var notes = new List<string>();
        if (every > 1)
        {
            notes.Add(Invariant($"Stations are half a chord apart for string lining: 1 reading in {every} is used, beginning with the first."));
        }

        int left = used.Count(r => r.IsOutlier);
        if (left > 0)
        {
            notes.Add(Invariant($"{Readings(left)} named as misread {(left == 1 ? "is" : "are")} not used; the fitted line's figure stands there."));
        }

        return (
            [.. used.Select(r => r.IsOutlier
                ? new Figure(r.Chainage, r.Fitting!.Value, r.Fitting.Value,
                    Invariant($"the line's figure; {r.Reading.Written(((VersineReading)r.Reading).Versine):0.##} {r.Reading.Unit.Sign()} was read"))
                : new Figure(r.Chainage, ((VersineReading)r.Reading).Versine, r.Fitting!.Value))],
            [.. notes]);
    }

    // How many readings further the next station half a chord on is, or 0 where the readings can't be used, and why not.
    private static int EveryReading(SurveyedTrack track, double chord, out string? why)
    {
        double own = track.Chord ?? chord, half = chord / 2;
        why = null;
        if (Math.Abs(own - chord) > Alike * chord)
        {
            why = Invariant($"The versines were read over a chord of {own:0.##} mm, not {chord:0.##} mm.");
            return 0;
        }

        if (OddEvenCheck.EvenSpacing(track.Versines) is not { } spacing)
        {
            why = "The stations are not evenly spaced.";
            return 0;
        }

        int every = (int)Math.Round(half / spacing);
        if (every < 1 || Math.Abs((every * spacing) - half) > Alike * half)
        {
            why = Invariant($"The stations are {spacing:0.##} mm apart; half the chord is {half:0.##} mm.");
            return 0;
        }

        if ((track.Versines.Count - 1) / every < 2)
        {
            why = "There are fewer than three stations half a chord apart.";
            return 0;
        }

        return every;
    }

    private static IEnumerable<double> Stations(SurveyedTrack track, double chord)
    {
        double half = chord / 2;
        return Enumerable.Range(1, (int)((track.Line.Length - chord) / half) + 1).Select(i => i * half);
    }

    private static double MissAt(ReadingResidual[] kept, double[] chainages, double chainage)
    {
        if (kept.Length == 0)
        {
            return 0;
        }

        int at = Array.BinarySearch(chainages, chainage);
        if (at >= 0)
        {
            return kept[at].Miss;
        }

        int after = ~at;
        if (after == 0 || after == kept.Length)
        {
            return kept[Math.Max(0, after - 1)].Miss;
        }

        var (a, b) = (kept[after - 1], kept[after]);
        return a.Miss + ((b.Miss - a.Miss) * (chainage - a.Chainage) / (b.Chainage - a.Chainage));
    }

    private static string Readings(int count) => count == 1 ? "1 reading" : Invariant($"{count} readings");

    private sealed record Figure(double Station, double Measured, double Fair, string Note = "");
}
