using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>A gap as a file states it: by its middle and width, or by the chainages of its posts on a straight track.</summary>
internal sealed record GapDraft(double? At, double? Width, double? From, double? To)
{
    public static SpecKeys<GapDraft> Keys { get; } = new SpecKeys<GapDraft>(_ => new(null, null, null, null))
        .Length("at", NumberRange.Anywhere, "Distance along the track of the gap's middle.", g => g.At, (g, v) => g with { At = v })
        .Length("width", NumberRange.Over0(10000), "Width from post to post, at the fence itself.", g => g.Width, (g, v) => g with { Width = v })
        .Length("from", NumberRange.Anywhere, "In place of at and width: where the gap begins; a post stands here.", g => g.From, (g, v) => g with { From = v })
        .Length(
            "to",
            NumberRange.Anywhere,
            "Where it ends. On a curve the posts stand about the middle of both, as far apart at the fence as these are.",
            g => g.To,
            (g, v) => g with { To = v })
        .Check((g, key) => g.IsWhole ? null : new(
            null,
            $"{key[(key.LastIndexOf('.') + 1)..]} has neither at and width nor from and to, or some of both.",
            "Give one pair of them, such as { at = 708, width = 16 } or { from = 700, to = 716 }."));

    public FenceGapSpec Spec => At is { } at && Width is { } width ? new(at - (width / 2), at + (width / 2)) : new(From ?? double.NaN, To ?? double.NaN);

    private bool IsWhole => (At is not null && Width is not null && From is null && To is null)
        || (At is null && Width is null && From is not null && To is not null);
}
