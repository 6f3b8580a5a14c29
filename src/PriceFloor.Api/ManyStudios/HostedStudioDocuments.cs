using FluentValidation;
using PriceFloor.Api.Access;
using PriceFloor.Api.Documents;
using PriceFloor.Api.Http;
using PriceFloor.Storage;

namespace PriceFloor.Api.ManyStudios;

/// <summary>The studios in the store of their host. A new one gets its own store, a file or rows, with the first revision of its document.</summary>
public sealed class HostedStudioDocuments(IValidator<HostedStudio> validator, Studios studios) : DocumentKind<HostedStudio>(Kinds.Studio, validator)
{
    private const string Rule = "1 to 64 of a to z, 0 to 9 and -, and begins with a letter or a digit";

    /// <summary>ISO 4217's code for no currency: a studio has no amounts.</summary>
    private static readonly Currency s_none = new("XXX", 0);

    public override async ValueTask<Outcome<Checked<HostedStudio>>> Check(Writing writing, string key, HostedStudio document,
        Stored<HostedStudio>? before, ProfileAccess access)
    {
        if (before is null)
        {
            if (!IsFolder(key))
                return RequestFault.Invalid(new InputError
                {
                    Parameter = "key",
                    Code = InputCodes.BadKey,
                    Detail = $"The key of a studio is {Rule}, since its folder has that name.",
                });
            await studios.BeginAsync(key);
        }

        return new Checked<HostedStudio>(document, s_none, []);
    }

    public override ValueTask Cascade(Writing writing, string key) => StudioKeys.Forget(writing, key);

    private static bool IsFolder(string key) => key.Length is >= 1 and <= Limits.KeyLength && key[0] != '-'
        && key.All(letter => char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter == '-');
}
