using PlatformForge.Geometry;
using PlatformForge.Platforms.Requests;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Track;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>A track as the project states it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Start">First point, mm.</param>
/// <param name="Heading">First direction, radians from the x axis.</param>
/// <param name="Elements">What it is made of.</param>
public sealed record TrackEntry(string Name, Point2 Start, double Heading, IReadOnlyList<AlignmentElementSpec> Elements)
{
    /// <summary>Which ends are at buffer stops: none, start, end, both.</summary>
    public string Buffers { get; init; } = "none";

    /// <summary>Names of the vehicles that run on it; null for all of the project.</summary>
    public IReadOnlyList<string>? Vehicles { get; init; }

    /// <summary>Height of its rails over the baseboard, mm, where it is another than the layout's; null where it is that.</summary>
    public double? RailTop { get; init; }

    /// <summary>How far the true track may lie off a stated alignment that came from a survey, mm.</summary>
    public double SurveyDoubt { get; init; }

    /// <summary>How it was measured, where its alignment is not stated.</summary>
    public SurveySpec? Survey { get; init; }

    /// <summary>The survey as written, before its files are read.</summary>
    internal SurveyForm? Form { get; init; }

    /// <summary>Key in the project file.</summary>
    public string Key { get; init; } = "track[0]";

    public bool StartsAtBuffers => Buffers is "start" or "both";

    public bool EndsAtBuffers => Buffers is "end" or "both";

    /// <summary>What the Track room lays.</summary>
    public AlignmentSpec Alignment => new(Name, Start, Heading, Elements, Key + ".alignment");
}

/// <summary>Keys of <c>[[track]]</c>.</summary>
internal static class TrackKeys
{
    private const double Degree = Math.PI / 180;

    private sealed record StartDraft(double X, double Y, double Heading);

    private static readonly KeyTable<StartDraft> Start = new KeyTable<StartDraft>(_ => new(0, 0, 0))
        .Length("x", NumberRange.From(-1e5, 1e5), "Place of the track's first point on the layout.", s => s.X, (s, v) => s with { X = v })
        .Length("y", NumberRange.From(-1e5, 1e5), "The same, square to x.", s => s.Y, (s, v) => s with { Y = v })
        .Number(
            "heading",
            NumberRange.From(-360, 360),
            "degrees",
            "Direction in which the track sets out: 0 along x, 90 along y.",
            s => s.Heading / Degree,
            (s, v) => s with { Heading = v * Degree });

    public static KeyTable<TrackEntry> Table { get; } = new KeyTable<TrackEntry>(_ => new("", default, 0, []))
        .Text("name", "Name of the track; platforms refer to it.", t => t.Name, (t, v) => t with { Name = v }, required: true)
        .Table(
            "start",
            "Where it begins.",
            Start,
            t => new StartDraft(t.Start.X, t.Start.Y, t.Heading),
            (t, v) => t with { Start = new(v.X, v.Y), Heading = v.Heading })
        .Tables(
            "alignment",
            "What the track is made of, in order: { straight = 250 }, { curve = 610, angle = 35, hand = \"left\" }, { transition = 150, to_radius = 610, hand "
                + "= \"left\" }.",
            ElementKeys.Table,
            (e, _) => e,
            (t, v) => t with { Elements = [.. v.Select(e => e.Element)] })
        .Table("survey",
            "How the track was measured, in place of an alignment: along the whole platform, and the longest vehicle's length beyond both ends (the command "
                + "survey with --how-much tells from where to where).",
            SurveyKeys.Table, t => t.Form, (t, v) => t with { Form = v })
        .Length("survey_doubt", NumberRange.From(0, 50),
            "How far the true track may lie off an alignment that a survey found; the survey command writes it with the alignment. "
                + "It goes into the budget for the longest overhang.",
            t => t.SurveyDoubt, (t, v) => t with { SurveyDoubt = v })
        .Length(
            "rail_top",
            PlatformSite.RailTops,
            "Height of this track's rails over the baseboard, where it lies higher or lower than the others; left out, that of [layout].",
            t => t.RailTop,
            (t, v) => t with { RailTop = v })
        .Text(
            "buffers",
            "Which end is at buffer stops, so that no more track need be known there.",
            t => t.Buffers,
            (t, v) => t with { Buffers = v },
            false,
            "none",
            "start",
            "end",
            "both")
        .Texts("vehicles", "Names of the vehicles that run here; left out, all of them do.", (t, v) => t with { Vehicles = v })
        .Check((t, table, key, reading) =>
        {
            if ((t.Elements.Count > 0) == (t.Form is not null))
            {
                reading.Fault(
                    "PF1013",
                    key,
                    table.Place,
                    $"{key} has {(t.Form is null ? "neither alignment nor survey" : "both alignment and survey")}.",
                    "Give one of them: what the track is made of, or how it was measured.",
                    t.Form is null ? new Cure(CureAct.Set, key + ".alignment", "[{ straight = 1000 }]") : Cure.LeaveOut(key + ".survey"));
            }

            if (t.Form is not null && table.Find("survey_doubt") is { } doubt)
            {
                reading.Fault(
                    "PF1013",
                    key + ".survey_doubt",
                    doubt.Place,
                    "The track has a survey and a survey_doubt; the survey finds its doubt itself.",
                    "Leave survey_doubt out; it belongs to an alignment that was copied from a survey.",
                    Cure.LeaveOut(key + ".survey_doubt"));
            }
        });
}
