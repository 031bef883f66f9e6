using System.Text.Json;
using PlatformForge.Cli.Commands;
using PlatformForge.Track.Surveys;
using PlatformForge.Track.Surveys.Readings;
using PlatformForge.Track.Surveys.Results;

namespace PlatformForge.Cli.Answers;

/// <summary>A fitted survey as JSON.</summary>
internal static class SurveyJson
{
    public static void Write(Utf8JsonWriter json, SurveyedTrack track, double? chord)
    {
        json.WriteStartObject();
        json.WriteString("track", track.Line.Name);
        JsonObject.Number(json, "length_mm", track.Line.Length);
        JsonObject.Number(json, "ruler_error_mm", track.RulerError);
        JsonObject.Number(json, "scatter_mm", track.Scatter);
        JsonObject.Number(json, "likely_within_mm", track.Movement.Likely.Max());
        JsonObject.Number(json, "worst_movement_mm", track.Movement.Worst.Max());
        JsonObject.Number(json, "least_radius_mm", track.LeastRadius?.Radius);
        JsonObject.Number(json, "least_radius_at_mm", track.LeastRadius?.Chainage);
        json.WriteString("laid", track.Laying.As.ToString().ToLowerInvariant());
        JsonObject.Number(json, "least_ruler_error_if_flexible_mm", track.Flexible is { IsEmpty: true } lines ? lines.LeastShare * track.RulerError : null);
        Platforms(json, track);
        json.WriteString("alignment_toml", track.Alignment is null ? null : AlignmentText.Toml(track));
        json.WriteStartArray("elements");
        foreach (var element in track.Elements)
        {
            json.WriteStartObject();
            json.WriteString("kind", element.Kind.ToString().ToLowerInvariant());
            JsonObject.Number(json, "from_mm", element.From);
            JsonObject.Number(json, "to_mm", element.To);
            JsonObject.Number(json, "start_curvature_per_mm", element.StartCurvature);
            JsonObject.Number(json, "end_curvature_per_mm", element.EndCurvature);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Readings(json, track);
        if (chord is { } length)
        {
            Lining(json, StringLining.Of(track, length));
        }

        json.WriteEndObject();
    }

    private static void Platforms(Utf8JsonWriter json, SurveyedTrack track)
    {
        json.WriteStartArray("platforms");
        foreach (var doubt in track.Doubts)
        {
            json.WriteStartObject();
            json.WriteString("platform", doubt.Platform);
            json.WriteString("vehicle", doubt.Vehicle);
            JsonObject.Number(json, "takes_of_gap_at_most_mm", doubt.Charged);
            JsonObject.Number(json, "reach_farther_at_most_mm", doubt.Most);
            JsonObject.Number(json, "at_mm", doubt.At);
            JsonObject.Number(json, "median_mm", doubt.Median);
            JsonObject.Number(json, "half_range_median_mm", doubt.Spread);
            JsonObject.Number(json, "if_flexible_mm", doubt.IfFlexible);
            JsonObject.Number(json, "if_sectional_mm", doubt.IfSectional);
            if (doubt.Advice is { } advice)
            {
                json.WriteString("repeat", advice.Repeat?.FileAndWhereabouts);
                JsonObject.Number(json, "repeat_leaves_mm", advice.RepeatLeaves);
                JsonObject.Number(json, "repeat_figure_mm", advice.RepeatFigure);
                json.WriteBoolean("repeat_restores", advice.RepeatRestores);
                JsonObject.Number(json, "one_more_at_mm", advice.MoreAt);
                JsonObject.Number(json, "one_more_along_mm", advice.MoreAlong);
                JsonObject.Number(json, "one_more_figure_mm", advice.MoreFigure);
                JsonObject.Number(json, "one_more_leaves_mm", advice.MoreLeaves);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("joints_in_doubt");
        foreach (var joint in track.JointsInDoubt)
        {
            json.WriteStartObject();
            JsonObject.Number(json, "stated_mm", joint.Stated);
            JsonObject.Number(json, "as_likely_mm", joint.Wanted);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Lining(Utf8JsonWriter json, StringLining lining)
    {
        JsonObject.Number(json, "string_lining_chord_mm", lining.Chord);
        json.WriteStartArray("string_lining_notes");
        foreach (string note in lining.Notes)
        {
            json.WriteStringValue(note);
        }

        json.WriteEndArray();
        json.WriteStartArray("string_lining");
        foreach (var row in lining.Rows)
        {
            json.WriteStartObject();
            JsonObject.Number(json, "station_mm", row.Station);
            JsonObject.Number(json, "measured_mm", row.Measured);
            JsonObject.Number(json, "proposed_mm", row.Proposed);
            JsonObject.Number(json, "slew_mm", row.FullThrow);
            json.WriteString("slew_way", row.Way);
            json.WriteString("note", row.Note);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Readings(Utf8JsonWriter json, SurveyedTrack track)
    {
        json.WriteStartArray("readings");
        foreach (var residual in track.Residuals)
        {
            json.WriteStartObject();
            json.WriteString("file", residual.Reading.File);
            json.WriteNumber(residual.Reading.DrawnAt is null ? "row" : "point", residual.Reading.Row);
            JsonObject.Number(json, "chainage_mm", residual.Chainage);
            JsonObject.Number(json, "miss_mm", residual.Miss);
            JsonObject.Number(json, "fitting", residual.Fitting);
            JsonObject.Number(json, "would_fit", residual.Fitting is { } figure ? residual.Reading.Written(figure) : null);
            json.WriteString("unit", residual.Reading.Unit.Sign());
            json.WriteBoolean("outlier", residual.IsOutlier);
            json.WriteBoolean("in_doubt", track.IsInDoubt(residual.Reading));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
