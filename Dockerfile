# Build: restores by the committed lock files, publishes for the platform that is asked for.
FROM --platform=$BUILDPLATFORM mcr.microsoft.com/dotnet/sdk:10.0@sha256:e70cdb7f80b0348f5cb85f19a8f670fca061f033d57eed12fa003d58b0e06317 AS build
ARG TARGETARCH
# The commit that /v1/version tells; git's own folder is not copied: --build-arg COMMIT=$(git rev-parse HEAD).
ARG COMMIT=
WORKDIR /source
COPY global.json Directory.Build.props Directory.Packages.props .editorconfig ./
COPY src ./src
RUN dotnet publish src/PriceFloor.Api --configuration Release --arch $TARGETARCH --self-contained false -p:RestoreLockedMode=true -p:SourceRevisionId=$COMMIT --output /app \
    && mkdir /data

# Run: no shell, no package manager, not root. Only /data is written, so the root file system can be read-only.
FROM mcr.microsoft.com/dotnet/aspnet:10.0-noble-chiseled@sha256:48e51f2f6798897be7ac4e775c049ed8fe60d3190f637e1f9c9dc7513efa659c
LABEL org.opencontainers.image.title="PriceFloor" \
      org.opencontainers.image.description="The lowest price that keeps a studio and its maker going for the year" \
      org.opencontainers.image.licenses="MIT"
WORKDIR /app
COPY --from=build /app ./
COPY --from=build --chown=$APP_UID:$APP_UID /data /data
ENV ASPNETCORE_URLS=http://+:5080 \
    ASPNETCORE_HTTP_PORTS= \
    PRICEFLOOR_DATA=/data \
    DOTNET_EnableDiagnostics=0
USER $APP_UID
VOLUME /data
EXPOSE 5080
HEALTHCHECK --interval=30s --timeout=5s --start-period=10s CMD ["dotnet", "PriceFloor.Api.dll", "healthcheck"]
ENTRYPOINT ["dotnet", "PriceFloor.Api.dll"]
